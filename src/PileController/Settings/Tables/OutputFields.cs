using PileController.Rigs;
using PileController.Rigs.Hardware;
using PileController.Settings.Fields;
using static PileController.Settings.Kinds.Kind;

namespace PileController.Settings.Tables;

/// <summary>Sections of "rig.hardware" that tell how an actuator is driven.</summary>
internal static class OutputFields
{
    /// <summary>"pump" and "blower".</summary>
    public static readonly FieldTable<LoadSettings> Load = new()
    {
        { "drive", WordOf<LoadDrive>(), l => l.Drive, (l, v) => l with { Drive = v }, "What drives it: its line; a channel of the board's PWM chip; a channel of the PWM chip on the I2C bus. A device for 0 to 10 V hangs on a PWM channel through a converter." },
        { "channel", OptionalWhole(0, 63), l => l.Channel, (l, v) => l with { Channel = (int?)v }, "Channel of the PWM chip." },
        { "frequency", Hertz(1, 100_000), l => l.FrequencyHz, (l, v) => l with { FrequencyHz = v }, "Frequency of the board's PWM; on the I2C bus it is i2cPwm.frequency for all." },
        { "least", Share(0, 0.95), l => l.Least, (l, v) => l with { Least = v }, "Signal at which the device just turns: the least duty above 0 gives this, and 0 gives nothing at all." },
        { "most", Share(0.05, 1), l => l.Most, (l, v) => l with { Most = v }, "Signal at full duty." },
        { "inverted", Flag, l => l.Inverted, (l, v) => l with { Inverted = v }, "Whether a full signal stops the device. Without a signal it then runs: it needs its line, with a relay in series." },
    };

    /// <summary>"i2cPwm".</summary>
    public static readonly FieldTable<I2cPwmSettings> I2cPwm = new()
    {
        { "bus", Whole(0, 255), c => c.Bus, (c, v) => c with { Bus = (int)v!.Value }, "Number of the bus, as in /dev/i2c-1." },
        { "address", Hex(0x40, 0x77), c => c.Address, (c, v) => c with { Address = v }, "Address on the bus." },
        { "frequency", Hertz(HardwareLimits.LeastI2cPwmHertz, HardwareLimits.MostI2cPwmHertz), c => c.FrequencyHz, (c, v) => c with { FrequencyHz = v }, "Frequency of all its channels." },
    };

    /// <summary>"valve".</summary>
    public static readonly FieldTable<ValveSettings> Valve = new()
    {
        { "openLine", OptionalWhole(0, 127), v => v.OpenLine, (o, v) => o with { OpenLine = (int?)v }, "Line that runs it open." },
        { "shutLine", OptionalWhole(0, 127), v => v.ShutLine, (o, v) => o with { ShutLine = (int?)v }, "Line that runs it shut." },
        { "openEndLine", OptionalWhole(0, 127), v => v.OpenEndLine, (o, v) => o with { OpenEndLine = (int?)v }, "Input of the switch that tells that it stands open." },
        { "shutEndLine", OptionalWhole(0, 127), v => v.ShutEndLine, (o, v) => o with { ShutEndLine = (int?)v }, "Input of the switch that tells that it stands shut." },
        { "endsActiveLow", Flag, v => v.EndsActiveLow, (o, v) => o with { EndsActiveLow = v }, "Whether a low input tells that it stands there." },
        { "deadTime", Seconds(0.1, 60), v => v.DeadTimeSeconds, (o, v) => o with { DeadTimeSeconds = v }, "Least rest of the motor between its two directions." },
        { "safe", WordOf<ValveSafe>(), v => v.Safe, (o, v) => o with { Safe = v }, "What it does at a fault, a trip and a stop: it stays where it is, or runs shut or open." },
        { "bleeds", Flag, v => v.Bleeds, (o, v) => o with { Bleeds = v }, "Whether a bleed round the shut valve lets the line above it drain." },
    };
}
