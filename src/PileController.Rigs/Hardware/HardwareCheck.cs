namespace PileController.Rigs.Hardware;

/// <summary>Refuses lines that cannot be used together.</summary>
internal static class HardwareCheck
{
    /// <summary>Throws when a line is negative or given twice.</summary>
    /// <exception cref="ArgumentException">Names the setting, what was given and what is allowed.</exception>
    public static void Require(HardwareSettings hardware)
    {
        Require(hardware.PumpPin, nameof(HardwareSettings.PumpPin));
        Require(hardware.BlowerPin, nameof(HardwareSettings.BlowerPin));
        Require(hardware.LampLine, nameof(HardwareSettings.LampLine));
        if (hardware.LampLine is { } lamp && (lamp == hardware.PumpPin || lamp == hardware.BlowerPin))
        {
            throw new ArgumentException(
                $"Hardware.LampLine is {lamp}, and so is the line of a load; the lamp needs a line of its own.", nameof(hardware));
        }

        if (hardware.PumpPin is { } pin && pin == hardware.BlowerPin)
        {
            throw new ArgumentException(
                $"Hardware.BlowerPin is {pin}, and so is Hardware.PumpPin; each load needs a line of its own.", nameof(hardware));
        }
    }

    private static void Require(int? pin, string field)
    {
        if (pin < 0)
        {
            throw new ArgumentException($"Hardware.{field} is {pin}; allowed is 0 or more, or none.", field);
        }
    }
}
