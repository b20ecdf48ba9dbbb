using PileController.Serving;
using PileController.Settings;
using PileController.Watch;

namespace PileController.Tests.Commands.Rigs;

public sealed class RigSafeTests : IDisposable
{
    private const string Spoilt = "{ \"rig\": ";

    // Chips that no board has: what is said of them tells which outputs were to be switched off.
    private const string Hardware = """
        {
          "rig": {
            "kind": "hardware",
            "probes": [{ "channel": "flow", "from": "pulses", "line": 90 }, { "channel": "heapTurns", "radius": "1 m", "height": "1 m", "address": "28-0000000000a1" }, { "channel": "house", "address": "28-0000000000a2" }],
            "hardware": {
              "gpioChip": "no such chip", "pwmChip": "no.such.pwm", "standingWater": "drainsBack",
              "pump": { "drive": "pwm", "channel": 0 }, "blowerPin": 27
            }
          }
        }
        """;

    private readonly string _folder = Directory.CreateTempSubdirectory("pile-").FullName;

    private string SettingsPath => Path.Combine(_folder, "pile.json");

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public async Task Safe_SimulatedRig_HasNothingToDo()
    {
        await File.WriteAllTextAsync(SettingsPath, "{}");
        CommandLine run = await SafeAsync();

        Assert.Equal(0, run.ExitCode);
        Assert.Contains("nothing to switch off", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Safe_ChipsThatAreNotThere_TellsEachAndWhatToDo()
    {
        await File.WriteAllTextAsync(SettingsPath, Hardware);
        CommandLine run = await SafeAsync();

        AssertTried(run);
    }

    [Theory]
    [InlineData(Spoilt)]
    [InlineData("{ \"rig\": { \"kind\": \"hardwear\" } }")]
    [InlineData(null)]
    public async Task Safe_FileThatCannotBeUsed_GoesByTheSettingsRunWithLast(string? text)
    {
        if (text is not null)
        {
            await File.WriteAllTextAsync(SettingsPath, text);
        }

        Keep("{}");
        Keep(Hardware);
        CommandLine run = await SafeAsync();

        Assert.Contains("ran with last", run.Error, StringComparison.Ordinal);
        AssertTried(run);
    }

    [Fact]
    public async Task Safe_SettingsGoneBackTo_AreTheLastThoughTheirFileIsOlder()
    {
        await File.WriteAllTextAsync(SettingsPath, Spoilt);
        Keep(Hardware);
        Keep("{}");
        Keep(Hardware);

        AssertTried(await SafeAsync());
    }

    [Fact]
    public async Task Safe_SoundFile_IsNotOutdoneByWhatIsKept()
    {
        await File.WriteAllTextAsync(SettingsPath, "{}");
        Keep(Hardware);
        CommandLine run = await SafeAsync();

        Assert.Equal((0, ""), (run.ExitCode, run.Error));
    }

    [Theory]
    [InlineData("{}", "simulated rig")]
    [InlineData("the pump on a line", "first, then those of the file")]
    public async Task Safe_FileEditedWhileTheServiceRan_MakesSafeWhatItRanWith(string edit, string said)
    {
        Keep(Hardware);
        StartBook.Of(_folder).Started();
        await File.WriteAllTextAsync(SettingsPath, edit == "{}" ? edit : Hardware.Replace("\"pump\": { \"drive\": \"pwm\", \"channel\": 0 }", "\"pumpPin\": 17", StringComparison.Ordinal));
        CommandLine run = await SafeAsync();

        AssertTried(run);
        Assert.Contains(said, run.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("")]
    [InlineData("// Only a comment more.\n")]
    public async Task Safe_FileOfTheWiringTheServiceRanWith_MakesItSafeWithoutAWordOfThat(string more)
    {
        Keep(Hardware);
        StartBook.Of(_folder).Started();
        await File.WriteAllTextAsync(SettingsPath, more + Hardware);
        CommandLine run = await SafeAsync();

        AssertTried(run);
        Assert.DoesNotContain("ran with", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Safe_FileEditedAfterTheServiceEndedInOrder_GoesByTheFile()
    {
        Keep(Hardware);
        StartBook book = StartBook.Of(_folder);
        book.Started();
        book.Ended([]);
        await File.WriteAllTextAsync(SettingsPath, "{}");
        CommandLine run = await SafeAsync();

        Assert.Equal((0, ""), (run.ExitCode, run.Error));
    }

    [Fact]
    public async Task Safe_NothingSoundAnywhere_SaysBothAndWhatToDo()
    {
        await File.WriteAllTextAsync(SettingsPath, Spoilt);
        CommandLine run = await SafeAsync();

        Assert.Equal(2, run.ExitCode);
        Assert.Contains($"--data is \"{_folder}\"", run.Error, StringComparison.Ordinal);
        Assert.Contains("by hand", run.Error, StringComparison.Ordinal);
    }

    private static void AssertTried(CommandLine run)
    {
        Assert.Equal(1, run.ExitCode);
        Assert.Contains("no.such.pwm", run.Error, StringComparison.Ordinal);
        Assert.Contains("no such chip", run.Error, StringComparison.Ordinal);
        Assert.Contains("cut their supply by hand", run.Output, StringComparison.Ordinal);
    }

    private void Keep(string text) => new DataFolder(_folder).KeepSettings(SettingsFile.Parse(text).Settings.Fingerprint(), text);

    private Task<CommandLine> SafeAsync() => CommandLine.RunAsync("rig", "safe", "--settings", SettingsPath, "--data", _folder);
}
