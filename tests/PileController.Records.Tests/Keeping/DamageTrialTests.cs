using System.Runtime.ExceptionServices;
using System.Text.Json;
using Microsoft.Extensions.Time.Testing;
using PileController.Control;
using PileController.Records.Checking;
using PileController.Records.Crash;
using PileController.Records.Keeping;
using PileController.Records.Packing;
using PileController.Records.Storage;
using PileController.Records.Tests.Storage;
using Xunit.Abstractions;

namespace PileController.Records.Tests.Keeping;

/// <summary>Damage at rest, anywhere: <c>PILE_DAMAGE=1000</c> makes more trials.</summary>
public sealed class DamageTrialTests(ITestOutputHelper output)
{
    private const int Ticks = 1000;
    private const int More = 200;
    private const int PageBytes = 8192;

    // A medium that loses what it holds refuses a write now and then, too: at every third place, one of the next so many.
    private const int RefusesEvery = 3;
    private const int RefusesWithin = 60;
    private static readonly int Places = Trials.Of("PILE_DAMAGE", 120);
    private static readonly List<TickEntry> History = TrialTicks.FirstLearned(Ticks, seed: 21);
    private static readonly List<TickEntry> Later = [.. TrialTicks.From(Memory.Fresh with { Sequence = Ticks }, seed: 22).Take(More)];
    private static readonly RecordOptions Options = new() { DataDirectory = "simulated", BlockTicks = 40, FileTicks = 400 };
    private static readonly Dictionary<string, byte[]> Sound = Written();
    private static readonly Dictionary<long, (long[] Cells, string Where)> Truth = TruthOf();

    [Fact]
    public void Damage_Anywhere_IsToldOrHarmlessAndTheRecordGoesOn()
    {
        string[] names = [.. Sound.Keys.Where(name => Sound[name].Length > 0).Order(StringComparer.Ordinal)];
        Assert.Contains(names, name => name.EndsWith(".log", StringComparison.Ordinal));
        Random random = new(31);
        int told = 0;
        int aside = 0;
        for (int trial = 0; trial < Places; trial++)
        {
            string name = names[trial % names.Length];
            byte[] damaged = (byte[])Sound[name].Clone();
            string what = $"Trial {trial}, '{name}': {Damage(damaged, (trial / names.Length) % 3, random)}";
            SimulatedDisk disk = Disk(name, damaged);
            int refuses = trial % RefusesEvery == 0 ? random.Next(1, RefusesWithin) : 0;
            (bool wasTold, bool wasSetAside) = OnAThreadOfItsOwn(() => Check(disk, name, what, refuses));
            told += wasTold ? 1 : 0;
            aside += wasSetAside ? 1 : 0;
        }

        // What a broken file leaves behind may not end the process when it is collected.
        Finalizers.Run();
        output.WriteLine($"{Places} places: {told} told, {Places - told} harmless, {aside} files set aside.");
        Assert.True(told > Places / 10, $"Only {told} of {Places} places mattered.");
    }

    // What a thread that lives on still knows is not finalized.
    private static T OnAThreadOfItsOwn<T>(Func<T> work)
    {
        T? result = default;
        ExceptionDispatchInfo? error = null;
        Thread thread = new(() =>
        {
            try
            {
                result = work();
            }
            catch (Exception exception)
            {
                error = ExceptionDispatchInfo.Capture(exception);
            }
        });
        thread.Start();
        thread.Join();
        error?.Throw();
        return result!;
    }

    private static (bool Told, bool SetAside) Check(SimulatedDisk disk, string name, string what, int refuses)
    {
        Faults faults = new();
        List<string> damage = [];
        using (RecordKeeper keeper = new(disk, Options, new FakeTimeProvider(), faults))
        {
            HashSet<long> found = Found(keeper.Batches(), damage.Add, what);
            bool told = faults.Text is not null || damage.Count > 0;
            Assert.True(told || found.Count == Ticks, $"{what}: {found.Count} of {Ticks} ticks came back, and nothing was said.");
            AssertTheOthersAreThere(disk, name, found, what);

            // It goes on behind the last tick that was ever acknowledged, whatever was lost.
            long last = keeper.LastSequence;
            Assert.True(last <= Ticks, what);
            disk.FullAt = refuses == 0 ? 0 : disk.Steps + refuses;
            foreach (TickEntry tick in Later)
            {
                keeper.Keep(tick);
                keeper.SyncIfDue();
            }

            keeper.Flush();
            Assert.Equal(0, keeper.Dropped);
        }

        using RecordReader reader = RecordReader.Open(disk);
        HashSet<long> after = Found(reader.Batches, damage.Add, what);
        Assert.True(after.Count(sequence => sequence > Ticks) == More, $"{what}: of {More} new ticks {after.Count(s => s > Ticks)} are there.");
        return (faults.Text is not null || damage.Count > 0, disk.Quarantined.Count > 0);
    }

    private static void AssertTheOthersAreThere(SimulatedDisk disk, string name, HashSet<long> found, string what)
    {
        string store = name.Replace(".log", "", StringComparison.Ordinal);
        foreach ((long sequence, (_, string where)) in Truth)
        {
            Assert.True(where == store || found.Contains(sequence), $"{what}: tick {sequence} of '{where}' is gone.");
        }

        Assert.All(disk.Quarantined, gone => Assert.True(
            gone == store || gone == store + ".log" || (store == TailFile.Name && gone == "tail.damaged"), $"{what}: '{gone}' was set aside."));
    }

    // Every tick that is given must be as it was written.
    private static HashSet<long> Found(IEnumerable<StoredBatch> batches, Action<string> tellDamage, string what)
    {
        HashSet<long> found = [];
        foreach (StoredBatch stored in batches)
        {
            PackedBatch batch;
            try
            {
                batch = stored.Batch();
                _ = stored.Lines();
            }
            catch (Exception exception) when (RecordShelf.IsDamage(exception))
            {
                tellDamage(exception.Message);
                continue;
            }

            AssertMemoryIsRightOrLost(stored.Where, batch, what);
            long[][] columns = Columns(batch);
            for (int row = 0; row < batch.Count; row++)
            {
                long sequence = batch.FirstSequence + row;
                Assert.True(found.Add(sequence), $"{what}: tick {sequence} is there twice.");
                Assert.True(
                    sequence > Ticks || Truth[sequence].Cells.SequenceEqual(columns.Select(column => column[row])), $"{what}: tick {sequence} is wrong.");
            }
        }

        return found;
    }

    // In the tail a memory is made from others.
    private static void AssertMemoryIsRightOrLost(string where, PackedBatch batch, string what)
    {
        if (where == TailFile.Name && batch.Head.LastSequence <= Ticks)
        {
            BatchText text = batch.Text();
            Assert.True(
                (text.IsBeforeLost || IsSame(text.MemoryBefore, History[(int)batch.FirstSequence - 1].MemoryBefore))
                && (text.HandedOn is not { } after || IsSame(after, History[(int)batch.Head.LastSequence - 1].MemoryAfter)),
                $"{what}: a memory of tick {batch.FirstSequence} to {batch.Head.LastSequence} is wrong.");
        }
    }

    private static bool IsSame(JsonElement stored, Memory memory) => stored.GetRawText() == RecordJson.Of(memory).GetRawText();

    private static string Damage(byte[] bytes, int kind, Random random)
    {
        int page = random.Next((bytes.Length + PageBytes - 1) / PageBytes) * PageBytes;
        int length = Math.Min(PageBytes, bytes.Length - page);
        switch (kind)
        {
            case 0:
                bytes.AsSpan(page, length).Clear();
                return $"page {page / PageBytes} zeroed";
            case 1:
                // Half of an older page under the first half of the new one: here the page before it.
                int half = length / 2;
                (page == 0 ? new byte[length - half] : bytes[(page - PageBytes + half)..(page - PageBytes + length)]).CopyTo(bytes.AsSpan(page + half));
                return $"page {page / PageBytes} torn";
            default:
                int at = random.Next(bytes.Length);
                int bit = random.Next(8);
                bytes[at] ^= (byte)(1 << bit);
                return $"bit {bit} of byte {at} flipped";
        }
    }

    private static Dictionary<string, byte[]> Written()
    {
        SimulatedDisk disk = new();
        RecordKeeper keeper = new(disk, Options, new FakeTimeProvider(), new Faults());
        foreach (TickEntry tick in History.Take(Ticks))
        {
            keeper.Keep(tick);
            keeper.SyncIfDue();
        }

        // Left as a process that is killed leaves it: with a log and a tail.
        keeper.Flush();
        return disk.Names().ToDictionary(name => name, disk.BytesOf);
    }

    private static SimulatedDisk Disk(string? name = null, byte[]? bytes = null)
    {
        SimulatedDisk disk = new();
        foreach ((string other, byte[] sound) in Sound)
        {
            disk.Replace(other, other == name ? bytes! : (byte[])sound.Clone());
        }

        return disk;
    }

    private static Dictionary<long, (long[] Cells, string Where)> TruthOf()
    {
        using RecordReader reader = RecordReader.Open(Disk());
        Dictionary<long, (long[] Cells, string Where)> truth = [];
        foreach (StoredBatch stored in reader.Batches)
        {
            PackedBatch batch = stored.Batch();
            long[][] columns = Columns(batch);
            for (int row = 0; row < batch.Count; row++)
            {
                truth.Add(batch.FirstSequence + row, ([.. columns.Select(column => column[row])], stored.Where));
            }
        }

        Assert.Equal(Ticks, truth.Count);
        return truth;
    }

    private static long[][] Columns(PackedBatch batch) => [.. Enumerable.Range(0, TickColumns.Count).Select(batch.Column)];
}
