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
        { "pumpPin", OptionalWhole(0, 127), h => h.PumpPin, (h, v) => h with { PumpPin = (int?)v }, "Line of the pump relay or gate; with PWM, of a relay in series, or null for none." },
        { "blowerPin", OptionalWhole(0, 127), h => h.BlowerPin, (h, v) => h with { BlowerPin = (int?)v }, "Line of the blower relay or gate; with PWM, of a relay in series, or null for none." },
        { "pump", OutputFields.Load, h => h.Pump, (h, v) => h with { Pump = v }, "How the pump is driven." },
        { "blower", OutputFields.Load, h => h.Blower, (h, v) => h with { Blower = v }, "How the blower is driven." },
        { "backupLine", OptionalWhole(0, 127), h => h.BackupLine, (h, v) => h with { BackupLine = (int?)v }, "Line of the relay of backup heat; always on or off." },
        { "valve", OutputFields.Valve, h => h.Valve, (h, v) => h with { Valve = v }, "Where the three-wire motor valve is wired: one line runs it open, one runs it shut, none stops it. Its travel is loop.valveTravel, its feedback control.valve.feedback." },
        { "pwmChip", OptionalText("the name of the chip's device, or the end of its path below /sys/devices, 1 to 120 letters", t => t.Length is > 0 and <= 120), h => h.PwmChip, (h, v) => h with { PwmChip = v }, "Device of the board's PWM chip, as readlink -f /sys/class/pwm/pwmchip*/device tells; never its number, which moves." },
        { "i2cPwm", OutputFields.I2cPwm, h => h.I2cPwm, (h, v) => h with { I2cPwm = v }, "The sixteen-channel PWM chip on the I2C bus (registers of a PCA9685), used by loads whose drive is \"i2cPwm\"; its output-enable pin belongs to the watchdog timer." },
        { "lampLine", OptionalWhole(0, 127), h => h.LampLine, (h, v) => h with { LampLine = (int?)v }, "Line that is held while all is well; when it is let go, a lamp or buzzer goes on." },
        { "lampBeats", Flag, h => h.LampBeats, (h, v) => h with { LampBeats = v }, "Whether that line changes every second while all is well, for a relay that falls off when the changes stay away." },
        { "pulseLine", OptionalWhole(0, 127), h => h.PulseLine, (h, v) => h with { PulseLine = (int?)v }, "Line that changes every second while the service proves its health; it feeds a timer in series with the loads, which lets them go when the changes stay away." },
        { "standingWater", WordOf<StandingWater>(), h => h.StandingWater, (h, v) => h with { StandingWater = v }, "What keeps exposed lines whole while water stands in them: at a fault all outputs go off and nothing moves." },
        { "activeLow", Flag, h => h.ActiveLow, (h, v) => h with { ActiveLow = v }, "Whether a low line switches the load on." },
        { "dutyPeriod", Seconds(0, 40), h => h.DutyPeriodSeconds, (h, v) => h with { DutyPeriodSeconds = v }, "Period in which a duty is shared out between on and off, 10 s to 40 s behind a solid-state gate; 0 s behind a relay, which is only on or off." },
    };
}
