using PileController.Records.Crash;
using static System.Threading.CancellationToken;

namespace PileController.Records.Tests;

/// <summary>What a record on a real disk tells of its damage, also to the start after the next.</summary>
public sealed class DamageHealthTests : IDisposable
{
    private const int Ticks = 300;
    private const int PageBytes = 8192;
    private static readonly List<TickEntry> History = TrialTicks.First(Ticks + 200);
    private readonly TrialFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public async Task Health_NewestFileBroken_TellsItUntilTheFolderIsEmptied()
    {
        string name = await WrittenAsync();
        Break(name);

        await using (LiteRecord record = Open())
        {
            AssertOneAside(record, name);
        }

        await using (LiteRecord record = Open())
        {
            AssertOneAside(record, name);
            await GoOnAsync(record);
        }

        Directory.Delete(Path.Combine(_folder.Path, "quarantine"), recursive: true);
        await using LiteRecord after = Open();
        Assert.Null(after.Health.Damage);
    }

    [Fact]
    public async Task Health_ClosedFileBroken_IsSetAsideOnceItWasAskedAndTheRestIsThere()
    {
        string name = await WrittenAsync();
        Break(Path.Combine(_folder.Path, "ticks-000000000001.pile"));
        await using LiteRecord record = Open();
        Assert.Null(record.Health.Damage);

        await record.DecisionsAsync(new DecisionAsk(0, long.MaxValue), None);
        Assert.Equal((0, 1), (record.Health.Damage!.FilesSetAside, record.Health.Damage.DamagedParts));
        await GoOnAsync(record);
        AssertOneAside(record, "ticks-000000000001.pile");
        Assert.NotEqual("ticks-000000000001.pile", Path.GetFileName(name));
        IReadOnlyList<DecisionLine> lines = await record.DecisionsAsync(new DecisionAsk(0, long.MaxValue), None);
        Assert.Equal(
            History.Where(t => t.Decision.Sequence > 120 && t.Decision.Kinds != 0).Select(t => t.Decision.Sequence).Reverse(),
            lines.Select(line => line.Sequence));
    }

    private static async Task GoOnAsync(LiteRecord record)
    {
        foreach (TickEntry tick in History.Skip(Ticks))
        {
            Assert.True(record.TryAppend(tick));
        }

        await record.FlushAsync(None);
    }

    private static void AssertOneAside(LiteRecord record, string path)
    {
        Assert.Equal(1, record.Health.Damage?.FilesSetAside);
        Assert.Equal(Path.GetFileName(path), record.Health.Damage!.Newest);
        Assert.True(record.Health.Accepting);
    }

    private static void Break(string path)
    {
        using FileStream stream = new(path, FileMode.Open, FileAccess.Write);
        byte[] page = new byte[PageBytes];
        page.AsSpan().Fill(0xA5);
        stream.Write(page);
    }

    // The newest of several files; all others are closed.
    private async Task<string> WrittenAsync()
    {
        await using (LiteRecord record = Open())
        {
            foreach (TickEntry tick in History.Take(Ticks))
            {
                Assert.True(record.TryAppend(tick));
                await record.FlushAsync(None);
            }
        }

        return Directory.GetFiles(_folder.Path, "ticks-*.pile").Max(StringComparer.Ordinal)!;
    }

    private LiteRecord Open() =>
        LiteRecord.Open(new RecordOptions { DataDirectory = _folder.Path, BlockTicks = 40, FileTicks = 120 });
}
