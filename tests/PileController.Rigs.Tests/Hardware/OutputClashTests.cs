using PileController.Control.Readings;
using PileController.Rigs.Hardware;

namespace PileController.Rigs.Tests.Hardware;

/// <summary>An output is made safe only where the rig has nothing else: a sensor is not driven, a valve not run by another's line.</summary>
public class OutputClashTests
{
    private static readonly RigSettings Wired = new()
    {
        Simulated = false,
        Probes =
        [
            new ProbeFit(Channel.Flow) { Wiring = new ProbeWiring { Source = ProbeSource.Pulses, Line = 24 } },
            new ProbeFit(Channel.PumpPower) { Wiring = new ProbeWiring { Source = ProbeSource.Ina219, Bus = 1, Device = 0x40 } },
        ],
        Hardware = new HardwareSettings
        {
            GpioChipLabel = "chip",
            PumpPin = 17,
            BlowerPin = 27,
            BackupLine = 16,
            LampLine = 22,
            PulseLine = 23,
            Valve = new ValveSettings { OpenLine = 5, ShutLine = 6, OpenEndLine = 12, ShutEndLine = 13 },
        },
    };

    private static readonly HardwareSettings Same = Wired.Hardware;

    public static TheoryData<string, HardwareSettings> Harmless => new()
    {
        { "the same", Same },
        { "a line nobody has", Same with { PumpPin = 4 } },
        { "two that are switched, the other way round", Same with { PumpPin = 27, BlowerPin = 17 } },
        { "another lamp", Same with { LampLine = 4 } },
        { "another line to feed the timer by, which is not moved", Same with { PulseLine = 24 } },
        { "lines of another chip", Same with { GpioChipLabel = "other", PumpPin = 24, ActiveLow = true } },
        { "a chip on I2C where nothing answers", Same with { Pump = I2c, I2cPwm = new I2cPwmSettings { Address = 0x41 } } },
    };

    public static TheoryData<string, HardwareSettings> Clashing => new()
    {
        { "rig.hardware.pumpPin is 24, which the rig has as rig.probes[0].line", Same with { PumpPin = 24 } },
        { "rig.hardware.lampLine is 24, which the rig has as rig.probes[0].line", Same with { LampLine = 24 } },
        { "rig.hardware.backupLine is 23, which the rig has as rig.hardware.pulseLine", Same with { BackupLine = 23, PulseLine = null } },
        { "rig.hardware.blowerPin is 12, which the rig has as rig.hardware.valve.openEndLine", Same with { BlowerPin = 12, Valve = new ValveSettings() } },
        { "rig.hardware.valve.openLine is 17, which the rig has as rig.hardware.pumpPin", Same with { PumpPin = 4, Valve = Same.Valve with { OpenLine = 17 } } },
        { "rig.hardware.valve.openLine is 6, which the rig has as rig.hardware.valve.shutLine", Same with { Valve = Same.Valve with { OpenLine = 6, ShutLine = 5 } } },
        { "rig.hardware.activeLow is true, and the rig has it false", Same with { ActiveLow = true } },
        { "rig.hardware.i2cPwm.address is 0x40 on bus 1, where the rig has the probe pumpPower", Same with { Pump = I2c } },
    };

    private static LoadSettings I2c => new() { Drive = LoadDrive.I2cPwm, Channel = 0 };

    [Theory]
    [MemberData(nameof(Harmless))]
    public void Find_OutputsThatMeetNothingElse_IsNone(string what, HardwareSettings told) =>
        Assert.True(OutputClash.Find(Wired, told) is null, what);

    [Theory]
    [MemberData(nameof(Clashing))]
    public void Find_OutputThatMeetsSomethingElse_TellsBoth(string clash, HardwareSettings told) =>
        Assert.Equal(clash, OutputClash.Find(Wired, told));
}
