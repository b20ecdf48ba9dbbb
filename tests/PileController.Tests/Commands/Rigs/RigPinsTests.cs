using System.Text.Json;
using PileController.Commands.Rigs;
using PileController.Control.Readings;
using PileController.Rigs;
using PileController.Settings;
using PileController.Tests.Architecture;

namespace PileController.Tests.Commands.Rigs;

public sealed class RigPinsTests : IDisposable
{
    private static readonly string Example = Path.Combine(Repository.Root, "hardware", "examples", "rig.json");

    private readonly string _file = Path.Combine(Path.GetTempPath(), $"pile-{Guid.NewGuid():N}.json");

    public void Dispose() => File.Delete(_file);

    [Fact]
    public void HardwarePage_ShowsThePinMapOfTheExampleAsItIsMade()
    {
        using StringWriter made = new();
        PinText.WriteMarkdown(made, SettingsFile.Load(Example).Settings.Rig);

        string page = Repository.Read("hardware/outputs.md").ReplaceLineEndings("\n");

        Assert.Contains($"<!-- pins -->\n{made.ToString().ReplaceLineEndings("\n")}<!-- /pins -->", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Example_IsSound() => Assert.Equal(0, (await CommandLine.RunAsync("check", Example)).ExitCode);

    [Fact]
    public void PinMap_KnowsEverySettingThatGivesALine()
    {
        // A line's setting is a whole number or null; a new one needs a row in PinMap and in HardwareLines.
        string[] lines = [.. Lines(typeof(HardwareSettings), "rig.hardware"), .. Lines(typeof(ValveSettings), "rig.hardware.valve")];

        Assert.Equal(lines.Order(StringComparer.Ordinal), HardwareLines.All.Select(row => $"rig.hardware.{row.Setting}").Order(StringComparer.Ordinal));
        Assert.Equal(lines.Order(StringComparer.Ordinal), PinMap.Settings.Order(StringComparer.Ordinal));
    }

    [Fact]
    public void Pin_OfAnEndSwitch_IsAnInputWithALevelOfItsOwn()
    {
        HardwareSettings hardware = new() { ActiveLow = false, Valve = new ValveSettings { OpenEndLine = 7, EndsActiveLow = true } };
        Pin pin = Assert.Single(PinMap.Of(hardware));

        Assert.Equal(("input", "low", "–"), (pin.Direction, pin.ActiveLevel, pin.SafeLevel));
    }

    [Fact]
    public void Signals_AreToldWithChipChannelAndSafeValue()
    {
        HardwareSettings hardware = new()
        {
            PwmChip = "clock.pwm",
            Pump = new LoadSettings { Drive = LoadDrive.Pwm, Channel = 1, FrequencyHz = 2000, Least = 0.2, Most = 0.9 },
            Blower = new LoadSettings { Drive = LoadDrive.I2cPwm, Channel = 5, Inverted = true },
            BlowerPin = 27,
        };

        Assert.Equal(
            [
                "PWM channel 1 of clock.pwm: loop pump, 2000 Hz, 20 % to 90 %, safe 0 %.",
                "PWM channel 5 of 0x40 on I2C bus 1: duct blower, 1000 Hz, 100 % to 0 %, safe 100 % with its relay off.",
            ],
            SignalList.Of(hardware).Select(signal => signal.Sentence));
        using StringWriter made = new();
        PinText.WriteColumns(made, new RigSettings { Simulated = false, Probes = [], Hardware = hardware });
        Assert.Contains("loop pump, 2000 Hz, 20 % to 90 %, safe 0 %. (rig.hardware.pump)", made.ToString(), StringComparison.Ordinal);
    }

    private static IEnumerable<string> Lines(Type type, string section) => type.GetProperties()
        .Where(property => property.PropertyType == typeof(int?))
        .Select(property => $"{section}.{char.ToLowerInvariant(property.Name[0])}{property.Name[1..]}");

    [Theory]
    [InlineData(false, "high", "low")]
    [InlineData(true, "low", "high")]
    public void Pin_IsSafeAtTheLevelThatSwitchesOff(bool activeLow, string active, string safe)
    {
        Pin pin = Assert.Single(PinMap.Of(new HardwareSettings { PumpPin = 5, ActiveLow = activeLow }));

        Assert.Equal((5, "loop pump", "output", active, safe), (pin.Line, pin.Function, pin.Direction, pin.ActiveLevel, pin.SafeLevel));
    }

    [Fact]
    public void Pins_AreListedByLine()
    {
        Assert.Equal([3, 9], PinMap.Of(new HardwareSettings { PumpPin = 9, BlowerPin = 3 }).Select(pin => pin.Line));
        Assert.Contains("rig.hardware.blowerPin", PinMap.Unwired(new HardwareSettings { PumpPin = 9 }));
    }

    [Fact]
    public async Task Pins_ForMachines_TellChipAndLines()
    {
        CommandLine run = await CommandLine.RunAsync("rig", "pins", "--settings", Example, "--json");

        Assert.Equal(0, run.ExitCode);
        using JsonDocument answer = JsonDocument.Parse(run.Output);
        Assert.Equal("board-gpio", answer.RootElement.GetProperty("chip").GetString());
        JsonElement first = answer.RootElement.GetProperty("lines")[0];
        Assert.Equal(5, first.GetProperty("line").GetInt32());
        Assert.Equal("input", first.GetProperty("direction").GetString());
    }

    [Theory]
    [InlineData(LineLevel.Low, "high", "low")]
    [InlineData(LineLevel.High, "low", "high")]
    public void Pins_OfASwitch_TellAtWhichLevelAllIsWell(LineLevel wellWhen, string ill, string well)
    {
        RigSettings rig = new()
        {
            Probes = [new(Channel.House), new(Channel.Leak) { Wiring = new() { Source = ProbeSource.Switch, Line = 6, WellWhen = wellWhen } }],
        };
        Pin pin = Assert.Single(InputPins.AndOutputs(rig));

        Assert.Equal((6, "input", ill, well, "rig.probes[1].line"), (pin.Line, pin.Direction, pin.ActiveLevel, pin.SafeLevel, pin.Setting));
    }

    [Fact]
    public async Task Pins_ForPeople_AreColumns()
    {
        CommandLine run = await CommandLine.RunAsync("rig", "pins", "--settings", Example);

        Assert.Equal(0, run.ExitCode);
        Assert.Matches(@"(?m)^17 +loop pump +output +high +low ", run.Output);
    }

    [Fact]
    public async Task Pins_OfASimulatedRig_SaysThatNothingIsDriven()
    {
        await File.WriteAllTextAsync(_file, "{}");
        CommandLine run = await CommandLine.RunAsync("rig", "pins", "--settings", _file);

        Assert.Equal(0, run.ExitCode);
        Assert.Contains("not wired: rig.hardware.pumpPin", run.Output, StringComparison.Ordinal);
        Assert.Equal("rig.kind is \"simulated\": none of these lines is driven.", run.Error.Trim());
    }

    [Fact]
    public async Task Pins_OfTwoOutputsOnOneLine_TellsTheFaultAndNoMap()
    {
        await File.WriteAllTextAsync(_file, """{ "rig": { "hardware": { "pumpPin": 17, "blowerPin": 17 } } }""");
        CommandLine run = await CommandLine.RunAsync("rig", "pins", "--settings", _file, "--json");

        Assert.Equal(2, run.ExitCode);
        Assert.Equal("", run.Output);
        Assert.Contains("rig.hardware.blowerPin is 17; allowed: another line than rig.hardware.pumpPin", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Pins_InTwoForms_IsWrongUse()
    {
        CommandLine run = await CommandLine.RunAsync("rig", "pins", "--settings", Example, "--json", "--markdown");

        Assert.Equal(2, run.ExitCode);
        Assert.Contains("--markdown and --json are two forms of answer", run.Error, StringComparison.Ordinal);
    }
}
