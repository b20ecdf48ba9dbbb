using PileController.Records;
using PileController.Serving;
using PileController.Settings;

namespace PileController.Tests.Commands;

public sealed class RecordTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("pile-record-").FullName;

    private string Data => Path.Combine(_folder, "data");

    private string Backup => Path.Combine(_folder, "backup");

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public async Task Backup_ThenRestore_SaysWhatItDid()
    {
        await BeginAsync();

        CommandLine made = await CommandLine.RunAsync("record", "backup", Backup, "--data", Data);
        CommandLine back = await CommandLine.RunAsync("record", "restore", Backup, "--data", Data, "--set-aside");

        Assert.True(made.ExitCode == 0, made.Error);
        Assert.Contains($"each read again: '{Backup}'", made.Output, StringComparison.Ordinal);
        Assert.True(back.ExitCode == 0, back.Error);
        Assert.Contains($"'{Data}.before-", back.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Backup_OfNoRecord_NamesTheFolder()
    {
        CommandLine said = await CommandLine.RunAsync("record", "backup", Backup, "--data", Data);

        Assert.Equal(2, said.ExitCode);
        Assert.StartsWith($"--data is \"{Data}\": ", said.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Backup_ToAFolderInUse_NamesItAndWhatIsAllowed()
    {
        await BeginAsync();
        Directory.CreateDirectory(Backup);
        await File.WriteAllTextAsync(Path.Combine(Backup, "letter"), "mine");

        CommandLine said = await CommandLine.RunAsync("record", "backup", Backup, "--data", Data);

        Assert.Equal(2, said.ExitCode);
        Assert.StartsWith($"DIR is \"{Backup}\": ", said.Error, StringComparison.Ordinal);
        Assert.Contains("allowed:", said.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Restore_OfADamagedBackup_IsRefusedWithTheFile()
    {
        await BeginAsync();
        await CommandLine.RunAsync("record", "backup", Backup, "--data", Data);
        string file = Directory.EnumerateFiles(Path.Combine(Backup, "settings"), "*.json").Single();
        await File.AppendAllTextAsync(file, " ");

        CommandLine said = await CommandLine.RunAsync("record", "restore", Backup, "--data", Path.Combine(_folder, "back"));

        Assert.Equal(1, said.ExitCode);
        Assert.Contains($"'settings/{Path.GetFileName(file)}'", said.Error, StringComparison.Ordinal);
        Assert.False(Directory.Exists(Path.Combine(_folder, "back")));
    }

    [Fact]
    public async Task Samples_AsParquet_AreWrittenWholeOrNotAtAll()
    {
        await BeginAsync();
        string file = Path.Combine(_folder, "house.parquet");
        string nowhere = Path.Combine(_folder, "none", "house.parquet");
        string[] ask = ["record", "samples", "--data", Data, "--channel", "house", "--parquet"];

        CommandLine written = await CommandLine.RunAsync([.. ask, file]);
        CommandLine refused = await CommandLine.RunAsync([.. ask, nowhere]);
        CommandLine both = await CommandLine.RunAsync([.. ask, file, "--csv"]);

        Assert.True(written.ExitCode == 0, written.Error);
        Assert.Contains($"rows are in {file}.", written.Output, StringComparison.Ordinal);
        // A Parquet file begins and ends with these four letters (Apache Parquet, file format).
        byte[] bytes = await File.ReadAllBytesAsync(file);
        Assert.True(bytes.AsSpan().StartsWith("PAR1"u8) && bytes.AsSpan().EndsWith("PAR1"u8));
        Assert.Equal(2, refused.ExitCode);
        Assert.Contains($"--parquet is \"{nowhere}\": ", refused.Error, StringComparison.Ordinal);
        Assert.Equal(2, both.ExitCode);
        Assert.Contains("--csv and --parquet are two forms of answer", both.Error, StringComparison.Ordinal);
        Assert.Equal(["data", "house.parquet"], Directory.EnumerateFileSystemEntries(_folder).Select(Path.GetFileName).Order());
    }

    [Theory]
    [InlineData("--from tells where", "--from", "2026-01-30")]
    [InlineData("--from must be before --to", "--with", "pile.json", "--from", "2026-01-30", "--to", "2026-01-29")]
    public async Task Replay_StretchThatMakesNoSense_IsRefused(string why, params string[] options)
    {
        CommandLine said = await CommandLine.RunAsync(["record", "replay", "--data", Data, .. options]);

        Assert.Equal(2, said.ExitCode);
        Assert.Contains(why, said.Error, StringComparison.Ordinal);
    }

    // A record that has not lived a tick yet.
    private async Task BeginAsync()
    {
        await using LiteRecord record = LiteRecord.Open(
            new RecordOptions { DataDirectory = Data, Origin = DataFolder.Origin(PileSettings.AlderBank) });
        new DataFolder(Data).KeepSettings(PileSettings.AlderBank.Fingerprint(), "{}");
    }
}
