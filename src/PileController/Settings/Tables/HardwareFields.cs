using PileController.Rigs;
using PileController.Settings.Fields;
using static PileController.Settings.Kinds.Kind;

namespace PileController.Settings.Tables;

/// <summary>Section "rig.hardware".</summary>
internal static class HardwareFields
{
    public static readonly FieldTable<HardwareSettings> Table = new()
    {
        { "oneWireRoot", Text("an absolute path, \"/sys/bus/w1/devices\"", p => p.StartsWith('/')), h => h.OneWireRoot, (h, v) => h with { OneWireRoot = v! }, "Root of the kernel's 1-Wire device files." },
        { "gpioChip", Text("the label the kernel gives the chip, 1 to 64 letters", t => t.Length is > 0 and <= 64), h => h.GpioChipLabel, (h, v) => h with { GpioChipLabel = v! }, "Label of the GPIO chip (gpiodetect lists them); has to be set on a real rig." },
        { "pumpPin", OptionalWhole(0, 127), h => h.PumpPin, (h, v) => h with { PumpPin = (int?)v }, "Line of the pump relay or gate." },
        { "blowerPin", OptionalWhole(0, 127), h => h.BlowerPin, (h, v) => h with { BlowerPin = (int?)v }, "Line of the blower relay or gate." },
        { "lampLine", OptionalWhole(0, 127), h => h.LampLine, (h, v) => h with { LampLine = (int?)v }, "Line that is held while all is well; when it is let go, a lamp or buzzer goes on." },
        { "lampBeats", Flag, h => h.LampBeats, (h, v) => h with { LampBeats = v }, "Whether that line changes every second while all is well, for a relay that falls off when the changes stay away." },
        { "standingWater", WordOf<StandingWater>(), h => h.StandingWater, (h, v) => h with { StandingWater = v }, "What keeps exposed lines whole while water stands in them: at a fault all outputs go off and nothing moves." },
        { "activeLow", Flag, h => h.ActiveLow, (h, v) => h with { ActiveLow = v }, "Whether a low line switches the load on." },
        { "dutyPeriod", Seconds(0, 40), h => h.DutyPeriodSeconds, (h, v) => h with { DutyPeriodSeconds = v }, "Period in which a duty is shared out between on and off, 10 s to 40 s behind a solid-state gate; 0 s behind a relay, which is only on or off." },
    };
}
