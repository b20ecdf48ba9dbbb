using System.Text.Json;
using PileController.Commissioning.Sheets;
using PileController.Ledgers;
using PileController.Records;

namespace PileController.Tests.Commands.Rigs;

public sealed class RigTestsTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("pile-rig-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public async Task Travel_OnTheDemo_AnswersInJsonWithTheDialogueBeside()
    {
        CommandLine run = await CommandLine.RunAsync("rig", "travel", "--yes", "--json");

        Assert.Equal(0, run.ExitCode);
        using JsonDocument answer = JsonDocument.Parse(run.Output);
        JsonElement outcome = answer.RootElement.GetProperty("outcomes")[0];
        Assert.Equal("sound", outcome.GetProperty("verdict").GetString());
        Assert.Equal(30, outcome.GetProperty("figure").GetDouble(), 0);
        Assert.False(answer.RootElement.GetProperty("kept").GetBoolean());
        Assert.Contains("What is held by hand meanwhile: pump (off); valve (shut, open); blower (off). Interlocks still outrank it.", run.Error);
    }

    [Fact]
    public async Task Pair_WithAFolderAndAName_IsKeptAndListedAndPrinted()
    {
        string page = Path.Combine(_folder, "sheet.html");

        CommandLine made = await CommandLine.RunAsync("rig", "pair", "--data", _folder, "--who", "Robin");
        CommandLine listed = await CommandLine.RunAsync("rig", "sheet", "--data", _folder, page);
        CommandLine machine = await CommandLine.RunAsync("rig", "sheet", "--data", _folder, "--json");

        Assert.Equal(0, made.ExitCode);
        Assert.Contains("Pair supply and return, by Robin (simulated rig)", listed.Output);
        Assert.Contains("Commissioning sheet: Alder Bank", await File.ReadAllTextAsync(page));
        using JsonDocument sheet = JsonDocument.Parse(machine.Output);
        Assert.Equal("pair", sheet.RootElement.GetProperty("entries")[0].GetProperty("test").GetString());
    }

    [Fact]
    public async Task PumpCurve_OnTheDemo_WritesAFileThatCalcPumpReads()
    {
        string pump = Path.Combine(_folder, "pump.json");

        CommandLine made = await CommandLine.RunAsync("rig", "pump-curve", "--yes", "--out", pump);
        CommandLine read = await CommandLine.RunAsync("calc", "pump", "--pump", pump, "--loop", Path.Combine(Architecture.Repository.Root, "hardware", "examples", "loop.json"));

        Assert.Equal((0, 0), (made.ExitCode, read.ExitCode));
        Assert.Empty(read.Error);
    }

    [Fact]
    public async Task WindDown_WithASeasonInTheBook_EntersWeightAndNotes()
    {
        await CommandLine.RunAsync("ledger", "open", "--data", _folder, "--who", "Robin", "--name", "2026");

        CommandLine made = await CommandLine.RunAsync("rig", "wind-down", "--data", _folder, "--who", "Robin");

        Assert.Equal(0, made.ExitCode);
        SeasonEntry season = Assert.Single(new BookFile(_folder).Read().Seasons);
        Assert.Equal(5200, Assert.Single(season.Masses).Kilograms);
        Assert.Equal("A simulated season.", Assert.Single(season.Notes).Text);
    }

    [Fact]
    public async Task AnyTest_WhileAServiceHasTheRecord_IsRefusedAndKeepsNothing()
    {
        await using LiteRecord used = LiteRecord.Open(new RecordOptions { DataDirectory = _folder });

        CommandLine run = await CommandLine.RunAsync("rig", "exercise", "--yes", "--data", _folder, "--who", "Robin");

        Assert.Equal(2, run.ExitCode);
        Assert.Contains("in use by another process", run.Error);
        Assert.Contains("Rig, then Commission", run.Error);
        Assert.False(File.Exists(Path.Combine(_folder, SheetFile.Name)));
    }

    [Theory]
    [InlineData("--data is missing", "rig", "find", "--yes", "--settings", "hardware/examples/rig.json")]
    [InlineData("--who is missing", "rig", "find", "--yes", "--data", "somewhere")]
    [InlineData("--duty is given once", "rig", "pump-curve", "--yes", "--duty", "50 %")]
    [InlineData("--runs is \"1\"", "rig", "bucket", "--yes", "--runs", "1")]
    [InlineData("there is no such folder", "rig", "sheet", "--data", "nowhere-at-all")]
    public async Task AnyTest_UsedWrongly_SaysWhatIsAllowed(string words, params string[] args)
    {
        CommandLine run = await CommandLine.RunAsync([.. args.Select(arg => arg.StartsWith("hardware/", StringComparison.Ordinal) ? Path.Combine(Architecture.Repository.Root, arg) : arg)]);

        Assert.Equal(2, run.ExitCode);
        Assert.Contains(words, run.Error);
    }
}
