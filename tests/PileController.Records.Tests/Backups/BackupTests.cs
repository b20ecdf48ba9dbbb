using PileController.Records.Backups;
using PileController.Records.Checking;
using PileController.Records.Crash;

namespace PileController.Records.Tests.Backups;

public sealed class BackupTests : IDisposable
{
    private const int Ticks = 1000;
    private static readonly DateTimeOffset Now = new(2026, 1, 30, 6, 5, 4, TimeSpan.Zero);
    private readonly TrialFolder _folder = new();

    private string Data => Path.Combine(_folder.Path, "data");

    private string Backup => Path.Combine(_folder.Path, "backup");

    private string Back => Path.Combine(_folder.Path, "back");

    private static CancellationToken None => CancellationToken.None;

    public void Dispose() => _folder.Dispose();

    [Fact]
    public async Task Backup_OfARecordAtRest_ComesBackAsItWas()
    {
        await WriteAsync();
        Directory.CreateDirectory(Path.Combine(Data, "settings"));
        await File.WriteAllTextAsync(Path.Combine(Data, "settings", "a1.json"), "{}");
        Directory.CreateDirectory(Back);

        CopyReport made = BackupMaker.Make(Data, Backup, Now);
        CopyReport back = BackupRestorer.Restore(Backup, Back, setAside: false, Now);

        Assert.True(made.Check.IsClean && back.Check.IsClean);
        Assert.Equal(Ticks, back.Check.Ticks);
        Assert.Empty(RecordVerifier.Check(Backup).Problems);
        Assert.Equal(RecordFiles.In(Data), RecordFiles.In(Back));
        Assert.Contains("settings/a1.json", RecordFiles.In(Back));
        Assert.All(RecordFiles.In(Data), name => Assert.Equal(
            File.ReadAllBytes(Path.Combine(Data, name)), File.ReadAllBytes(Path.Combine(Back, name))));
        Assert.Equal([Back, Backup, Data], Directory.EnumerateDirectories(_folder.Path).Order());

        await using LiteRecord record = Open(Back);
        Assert.Null(record.Health.Fault);
        SameMemory.Assert(TrialTicks.First(Ticks)[^1].MemoryAfter, await record.LastMemoryAsync(None));
    }

    [Fact]
    public async Task Backup_OfALockedHolding_LeavesOutWhoMayComeIn()
    {
        await WriteAsync();
        await File.WriteAllTextAsync(Path.Combine(Data, "access.json"), "{}");
        await File.WriteAllTextAsync(Path.Combine(Data, "access-keys.json"), "{}");
        await File.WriteAllTextAsync(Path.Combine(Data, "access.jsonl"), "{}");

        BackupMaker.Make(Data, Backup, Now);

        Assert.Equal(["access.jsonl"], Directory.GetFiles(Backup, "access*").Select(Path.GetFileName));
        Assert.Empty(RecordVerifier.Check(Backup).Problems);
    }

    [Fact]
    public async Task Backup_WhileTicksCome_EndsAtOneTickAndHasAllThatWereSafe()
    {
        await using LiteRecord record = Open(Data);
        using CancellationTokenSource stop = new();
        Task writing = Task.Run(async () =>
        {
            foreach (TickEntry tick in TrialTicks.From(Control.Memory.Fresh, 1))
            {
                Assert.True(record.TryAppend(tick));
                if (tick.Decision.Sequence % 20 == 0)
                {
                    await record.FlushAsync(None);
                }

                if (stop.IsCancellationRequested)
                {
                    return;
                }
            }
        });
        try
        {
            for (int trial = 0; trial < 8; trial++)
            {
                await record.FlushAsync(None);
                long safe = record.Health.LastSequence;

                CopyReport made = BackupMaker.Make(Data, $"{Backup}{trial}", Now);

                Assert.Empty(made.Check.Problems);
                Assert.True(made.Check.LastSequence >= safe, $"{made.Check.LastSequence} of {safe} ticks are in backup {trial}.");
                Assert.Equal(made.Check.LastSequence, made.Check.Ticks);
            }
        }
        finally
        {
            await stop.CancelAsync();
            await writing;
        }

        await record.FlushAsync(None);
        Assert.Null(record.Health.Fault);
        ReplayReport replay = RecordReplayer.Run($"{Backup}7", TrialTicks.Step);
        Assert.Equal(replay.Ticks, replay.Identical);
        Assert.Null(replay.FirstDifference);
    }

    [Fact]
    public async Task Backup_WhereSomethingLies_IsRefusedAndLeavesItAlone()
    {
        await WriteAsync();
        Directory.CreateDirectory(Backup);
        await File.WriteAllTextAsync(Path.Combine(Backup, "letter"), "mine");

        IOException error = Assert.Throws<IOException>(() => BackupMaker.Make(Data, Backup, Now));
        Assert.Contains("not empty", error.Message, StringComparison.Ordinal);
        Assert.Throws<IOException>(() => BackupMaker.Make(Data, Path.Combine(Data, "inside"), Now));
        Assert.Throws<DirectoryNotFoundException>(() => BackupMaker.Make(Back, Path.Combine(_folder.Path, "other"), Now));

        Assert.Equal(["letter"], Directory.EnumerateFileSystemEntries(Backup).Select(Path.GetFileName));
        Assert.Equal([Backup, Data], Directory.EnumerateDirectories(_folder.Path).Order());
    }

    [Fact]
    public async Task Backup_OfADamagedRecord_IsMadeAndTold()
    {
        await WriteAsync();
        string store = Directory.EnumerateFiles(Data, "*.pile").Order().First();
        byte[] bytes = await File.ReadAllBytesAsync(store);
        bytes.AsSpan(8192).Clear();
        await File.WriteAllBytesAsync(store, bytes);
        int problems = RecordVerifier.Check(Data).Problems.Count;
        Assert.NotEqual(0, problems);

        CopyReport made = BackupMaker.Make(Data, Backup, Now);

        Assert.Equal(problems, made.Check.Problems.Count);
        Assert.Equal(problems, BackupRestorer.Restore(Backup, Back, setAside: false, Now).Check.Problems.Count);
    }

    [Fact]
    public async Task Restore_OfADamagedBackup_IsRefusedWhereverTheDamageIs()
    {
        await WriteAsync();
        BackupMaker.Make(Data, Backup, Now);
        string[] names = [.. RecordFiles.In(Backup), BackupManifest.Name];
        Random random = new(6);
        foreach (string name in names.Where(name => new FileInfo(Path.Combine(Backup, name)).Length > 0))
        {
            string path = Path.Combine(Backup, name);
            byte[] sound = await File.ReadAllBytesAsync(path);
            for (int trial = 0; trial < 40; trial++)
            {
                byte[] damaged = (byte[])sound.Clone();
                damaged[random.Next(damaged.Length)] ^= (byte)(1 << random.Next(8));
                await File.WriteAllBytesAsync(path, trial == 0 ? damaged[..^1] : damaged);

                AssertRefusedOrTheSame(name);
            }

            File.Delete(path);
            Assert.ThrowsAny<Exception>(() => BackupRestorer.Restore(Backup, Back, setAside: false, Now));
            await File.WriteAllBytesAsync(path, sound);
        }

        await File.WriteAllTextAsync(Path.Combine(Backup, "ticks-000000009999.pile"), "stray");
        Assert.Throws<InvalidDataException>(() => BackupRestorer.Restore(Backup, Back, setAside: false, Now));
        Assert.False(Directory.Exists(Back));
    }

    [Fact]
    public async Task Restore_WhereARecordLies_NeedsLeaveAndKeepsIt()
    {
        await WriteAsync();
        BackupMaker.Make(Data, Backup, Now);
        await using (LiteRecord record = Open(Data))
        {
            Assert.Throws<RecordInUseException>(() => BackupRestorer.Restore(Backup, Data, setAside: true, Now));
            record.TryAppend(TrialTicks.First(Ticks + 1)[^1]);
        }

        IOException error = Assert.Throws<IOException>(() => BackupRestorer.Restore(Backup, Data, setAside: false, Now));
        Assert.Contains("--set-aside", error.Message, StringComparison.Ordinal);
        Assert.Equal(Ticks + 1, RecordVerifier.Check(Data).Ticks);

        CopyReport back = BackupRestorer.Restore(Backup, Data, setAside: true, Now);

        Assert.Equal(Data + ".before-20260130T060504Z", back.SetAside);
        Assert.Equal(Ticks, RecordVerifier.Check(Data).Ticks);
        Assert.Equal(Ticks + 1, RecordVerifier.Check(back.SetAside!).Ticks);
    }

    [Fact]
    public async Task Restore_ToALink_ReplacesWhatItPointsTo()
    {
        await WriteAsync();
        BackupMaker.Make(Data, Backup, Now);
        string real = Path.Combine(_folder.Path, "real");
        Directory.CreateDirectory(real);
        Directory.CreateSymbolicLink(Back, real);

        CopyReport back = BackupRestorer.Restore(Backup, Back, setAside: false, Now);

        Assert.Equal(real, back.Directory);
        Assert.NotNull(new DirectoryInfo(Back).LinkTarget);
        Assert.Equal(Ticks, RecordVerifier.Check(Back).Ticks);
    }

    // White space and the case of a digit may change unseen; what the manifest says may not.
    private void AssertRefusedOrTheSame(string name)
    {
        try
        {
            BackupRestorer.Restore(Backup, Back, setAside: false, Now);
        }
        catch (Exception error) when (error is InvalidDataException or DirectoryNotFoundException)
        {
            Assert.False(Directory.Exists(Back));
            return;
        }

        Assert.Equal(BackupManifest.Name, name);
        Assert.Equal(Ticks, RecordVerifier.Check(Back).Ticks);
        Directory.Delete(Back, recursive: true);
    }

    private async Task WriteAsync()
    {
        await using LiteRecord record = Open(Data);
        foreach (TickEntry tick in TrialTicks.First(Ticks))
        {
            record.TryAppend(tick);
        }
    }

    private static LiteRecord Open(string folder) =>
        LiteRecord.Open(new RecordOptions { DataDirectory = folder, BlockTicks = 60, FileTicks = 360, WaitingTicks = 1_000_000 });
}
