using PileController.Control.Decisions;
using PileController.Records.Crash;
using PileController.Records.Keeping;
using PileController.Records.Packing;
using PileController.Records.Queries;
using PileController.Records.Storage;
using PileController.Records.Tests.Keeping;
using PileController.Records.Tests.Storage;

namespace PileController.Records.Tests.Queries;

/// <summary>Questions for decisions by a text, asked again and again of a record that grows, against a plain look at every line.</summary>
public sealed class DecisionsQueryTests
{
    // Signs that JSON writes otherwise, that have a case beyond ASCII, that lie outside the first plane.
    private static readonly string[] Words =
        ["valve", "Größe", "a \"quoted\" word", "back\\slash", "°C", "línea", "ΣΑΣ", "𐐀𐐨", "new\nline", "<&>", "note", "why"];

    private static readonly string[] Absent = ["nowhere to be found", "\"mode\":", "valve\nvalve", "ß°", "{", "sequence"];

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    public void Decisions_ByText_AreThoseOfAPlainScan(int seed)
    {
        Random random = new(seed);
        QueryCache cache = new();
        SimulatedDisk disk = new();
        using RecordKeeper keeper = SmallRecord.Open(disk, SmallRecord.Options with { KeepTicks = 100 });
        foreach (TickEntry[] some in TrialTicks.First(400, seed).Chunk(80))
        {
            foreach (TickEntry tick in some)
            {
                keeper.Keep(Worded(tick, random));
                keeper.SyncIfDue();
            }

            IReadOnlyList<DecisionLine> all = SmallRecord.Lines(keeper.Contents());
            Assert.NotEmpty(all);
            for (int asked = 0; asked < 40; asked++)
            {
                DecisionAsk ask = Ask(random, all);

                Assert.Equal(Plain(all, ask), RecordQueries.Decisions(keeper.Contents(), cache, ask, problem => Assert.Fail(problem)));
            }

            keeper.Rest();
        }
    }

    [Fact]
    public void Decisions_WithAnAbsentText_AskedAgain_OpenNoFile()
    {
        SimulatedDisk disk = new();
        SmallRecord.Write(disk, TrialTicks.First(400, seed: 6));
        using RecordStore store = RecordStore.Open(disk, 80, setAside: false);
        RecordContents contents = new(store, []);
        QueryCache cache = new();
        DecisionAsk ask = new(0, long.MaxValue) { Text = Absent[0] };
        Assert.Empty(RecordQueries.Decisions(contents, cache, ask, problem => Assert.Fail(problem)));
        store.LetGo();

        Assert.Empty(RecordQueries.Decisions(contents, cache, ask, problem => Assert.Fail(problem)));

        Assert.DoesNotContain(store.Files, file => file.IsOpen);
    }

    [Fact]
    public void Decisions_OfDaysThatAreSummedUp_OpenNoFileOfTicks()
    {
        SimulatedDisk disk = new();
        SmallRecord.Write(disk, TrialTicks.First(400, seed: 6));
        using RecordStore store = RecordStore.Open(disk, 80, setAside: false);
        store.LetGo();

        RecordQueries.Decisions(
            new RecordContents(store, []), new QueryCache(), new DecisionAsk(0, long.MaxValue), problem => Assert.Fail(problem));

        Assert.Equal(store.Ticks.LastSequence, store.Lasting.LastSequence);
        Assert.DoesNotContain(store.Ticks.Files, file => file.IsOpen);
    }

    [Fact]
    public void NewestDays_MoreThanThereIsRoomFor_KeepsTheNewestAndReadsTheOthersEachTime()
    {
        NewestDays<string> known = new(mostBytes: 30);
        List<long> read = [];

        // Newest first, as a question goes, and twice.
        for (int day = 9; day >= 1; day--)
        {
            Assert.Equal($"day {day}", Open(day));
        }

        read.Clear();
        for (int day = 9; day >= 1; day--)
        {
            Assert.Equal($"day {day}", Open(day));
            Assert.True(known.Bytes <= 30);
        }

        Assert.Equal([6, 5, 4, 3, 2, 1], read);
        Open(10);
        read.Clear();
        Open(8);
        Open(7);
        Assert.Equal([7], read);

        string Open(long day) => known.Open(new BatchHead(day, 1, day, day, default), () =>
        {
            read.Add(day);
            return ($"day {day}", 10);
        });
    }

    private static TickEntry Worded(TickEntry tick, Random random) => random.Next(4) != 0
        ? tick
        : tick with
        {
            Decision = tick.Decision with
            {
                Kinds = DecisionKinds.Hand,
                Note = $"{Words[random.Next(Words.Length)]} {random.Next(30)} {Words[random.Next(Words.Length)]}",
            },
        };

    private static DecisionAsk Ask(Random random, IReadOnlyList<DecisionLine> all)
    {
        long from = random.Next(3) == 0 ? TrialTicks.At(random.Next(400)).UtcMilliseconds : 0;
        return new DecisionAsk(from, random.Next(3) == 0 ? TrialTicks.At(random.Next(400)).UtcMilliseconds : long.MaxValue)
        {
            Text = random.Next(3) == 0 ? Absent[random.Next(Absent.Length)] : Piece(all[random.Next(all.Count)], random),
            Mode = random.Next(4) == 0 ? all[random.Next(all.Count)].Mode : null,
            Curb = random.Next(4) == 0 ? all[random.Next(all.Count)].Curb : null,
            Limit = random.Next(2) == 0 ? int.MaxValue : random.Next(8),
        };
    }

    private static string Piece(DecisionLine line, Random random)
    {
        string text = random.Next(2) == 0 ? line.Why : line.Note ?? line.Why;
        int at = random.Next(text.Length);
        string piece = text.Substring(at, random.Next(text.Length - at + 1));
        return random.Next(3) switch { 0 => piece.ToUpperInvariant(), 1 => piece.ToLowerInvariant(), _ => piece };
    }

    private static IEnumerable<DecisionLine> Plain(IReadOnlyList<DecisionLine> oldestFirst, DecisionAsk ask) => oldestFirst
        .Where(line => line.UtcMilliseconds >= ask.FromUtcMilliseconds && line.UtcMilliseconds < ask.ToUtcMilliseconds)
        .Where(line => (ask.Mode ?? line.Mode) == line.Mode && (ask.Curb ?? line.Curb) == line.Curb)
        .Where(line => new[] { line.Why, line.Note }.Any(text => text?.Contains(ask.Text!, StringComparison.OrdinalIgnoreCase) ?? false))
        .Reverse().Take(ask.Limit);
}
