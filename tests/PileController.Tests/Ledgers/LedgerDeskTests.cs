using PileController.Control;
using PileController.Ledgers;
using PileController.Ledgers.Counting;
using PileController.Ledgers.Editing;
using PileController.Records;

namespace PileController.Tests.Ledgers;

public sealed class LedgerDeskTests : IDisposable
{
    // Noon in New York on the day before its clocks go forward.
    private static readonly DateTimeOffset Start = new(2026, 3, 7, 17, 0, 0, TimeSpan.Zero);

    private readonly string _folder = Directory.CreateTempSubdirectory("pile-desk-").FullName;
    private readonly BookTicks _ticks = new();

    private static CancellationToken None => CancellationToken.None;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public async Task Days_OverSummerTimeRestartAndAClockSetBack_AreEachCountedOnce()
    {
        await using (LiteRecord record = Open())
        {
            using LedgerDesk desk = Desk(record);
            _ticks.Live(record, Start, 30 * 60);
            LedgerView view = await desk.KeepAsync(None);
            Assert.Equal([7], view.Book.Days.Select(d => d.Date.Day));
        }

        _ticks.Restart();
        await using (LiteRecord record = Open())
        {
            using LedgerDesk desk = Desk(record);
            _ticks.Live(record, Start.AddHours(31), 7 * 60);
            await desk.KeepAsync(None);

            // Set back by four hours, over the midnight that was kept already.
            _ticks.Live(record, Start.AddHours(34), 20 * 60);
            LedgerView view = await desk.KeepAsync(None);

            IReadOnlyList<SpanSum> days = SpanSum.ByDay(view.Days);
            Assert.Equal(["2026-03-07", "2026-03-08", "2026-03-09"], days.Select(d => d.Span));
            Assert.Equal(view.Days.Sum(d => d.Figures.Ticks), _ticks.Memory.Sequence);
            Assert.Equal(Blocks.Of(_ticks.Memory.Sequence).WaterJoules / 3.6e6, days.Sum(d => d.WaterKWh), 1e-9);
            Assert.Equal(Blocks.Of(_ticks.Memory.Sequence).Litres, SpanSum.Of("", view.Days).Litres, 1e-6);

            // An edge is that of a block, of an hour at most: within half an hour of midnight.
            Assert.InRange(days[0].RecordedHours, 11.5, 12.5);
        }
    }

    [Fact]
    public async Task Book_LookedAt_IsNotWrittenAndKeptTwiceIsTheSame()
    {
        await using LiteRecord record = Open();
        using LedgerDesk desk = Desk(record);
        _ticks.Live(record, Start, 40 * 60);

        LedgerView looked = await desk.LookAsync(None);
        Assert.False(File.Exists(Path.Combine(_folder, BookFile.Name)));
        LedgerView kept = await desk.KeepAsync(None);
        string text = File.ReadAllText(Path.Combine(_folder, BookFile.Name));
        LedgerView again = await desk.KeepAsync(None);

        Assert.Equal(looked.Days, kept.Days);
        Assert.Equal(kept.Days, again.Days);
        Assert.Equal(text, File.ReadAllText(Path.Combine(_folder, BookFile.Name)));
        Assert.Equal(new DateOnly(2026, 3, 9), again.Now!.Date);
    }

    [Fact]
    public async Task Book_OfARecordThatWasRemoved_GoesOnWithTheNewOne()
    {
        await using (LiteRecord record = Open())
        {
            using LedgerDesk desk = Desk(record);
            _ticks.Live(record, Start, 40 * 60);
            await desk.KeepAsync(None);
        }

        foreach (string file in Directory.EnumerateFiles(_folder).Where(f => Path.GetFileName(f) != BookFile.Name))
        {
            File.Delete(file);
        }

        BookTicks fresh = new();
        await using LiteRecord other = Open();
        using LedgerDesk later = Desk(other);
        fresh.Live(other, Start.AddDays(3), 30 * 60);
        LedgerView view = await later.KeepAsync(None);

        // Of the first record the two days that were over were kept: noon to midnight and one of 23 hours, give or take half a block.
        Assert.Equal(Blocks.Of(((12 + 23) * 60) + fresh.Memory.Sequence).Litres, view.Days.Sum(d => d.Energy.Litres), Blocks.Of(30).Litres);
        Assert.Equal(fresh.Memory.Sequence, view.Days.Where(d => d.Date.Day >= 10).Sum(d => d.Figures.Ticks));
    }

    [Fact]
    public async Task Change_OfABookThatCannotBeRead_TouchesNothing()
    {
        await using LiteRecord record = Open();
        using LedgerDesk desk = Desk(record);
        File.WriteAllText(Path.Combine(_folder, BookFile.Name), "{ \"schema\": 9 }");

        await Assert.ThrowsAsync<BookFileException>(() => desk.KeepAsync(None));
        await Assert.ThrowsAsync<BookFileException>(() => desk.LookAsync(None));

        Assert.Equal("{ \"schema\": 9 }", File.ReadAllText(Path.Combine(_folder, BookFile.Name)));
    }

    [Fact]
    public async Task Changes_MadeAtOnce_AreAllInTheBook()
    {
        await using LiteRecord record = Open();
        using LedgerDesk desk = Desk(record);
        _ticks.Live(record, Start, 60);
        await desk.EditAsync((view, _) => SeasonEdits.Open(view.Book, "one", new DateOnly(2026, 3, 1), new DateOnly(2026, 3, 7), SampleBook.Propane), None);

        await Task.WhenAll(Enumerable.Range(0, 12).Select(i => Task.Run(() => desk.EditAsync(
            (view, _) => EntryEdits.Note(view.Book, null, new NoteEntry($"note {i}", SampleBook.Jo)), None))));

        LedgerView all = await desk.LookAsync(None);
        Assert.Equal(12, all.Book.Seasons[0].Notes.Select(n => n.Text).Distinct().Count());
    }

    [Fact]
    public async Task Season_Closed_TakesItsLessonsFromWhatControlRemembers()
    {
        await using LiteRecord record = Open();
        using LedgerDesk desk = Desk(record);
        _ticks.Live(record, Start, 30 * 60);
        await desk.EditAsync((view, _) => SeasonEdits.Open(view.Book, "one", new DateOnly(2026, 3, 1), new DateOnly(2026, 3, 8), SampleBook.Propane), None);

        Memory? seen = null;
        LedgerView closed = await desk.EditAsync(
            (view, memory) =>
            {
                seen = memory;
                return SeasonEdits.Close(
                    view.Book, new DateOnly(2026, 3, 8), new DateOnly(2026, 3, 8), SampleBook.Jo, season => LedgerLessons.Of(view, memory, season));
            },
            None);

        Assert.Equal(_ticks.Memory.Sequence, seen!.Sequence);
        Lessons lessons = closed.Book.Seasons[0].Closed!.Lessons!;
        Assert.Equal(BookTicks.Settings.Control.CoilWPerK, lessons.ToldCoilWPerK);
        Assert.Equal(new DateOnly(2026, 3, 8), lessons.Fading.LastBorneOn);
    }

    private LiteRecord Open() => LiteRecord.Open(new RecordOptions { DataDirectory = _folder, BlockTicks = 60 });

    private LedgerDesk Desk(LiteRecord record) => new(_folder, record, _ => null, BookTicks.Settings);
}
