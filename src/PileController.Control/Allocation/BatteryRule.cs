using PileController.Control.Readings;

namespace PileController.Control.Allocation;

/// <summary>What the battery leaves for comfort: its last part is kept for frost.</summary>
internal static class BatteryRule
{
    // Above the voltage that holds the blower off, V: from the first comfort gets nothing, from the second all. At rest a
    // lead battery stands at about 12.2 V half charged (common practice, no source).
    private const double NothingV = 0.3;
    private const double AllV = 0.6;

    /// <summary>Share of what comfort wants that the battery has to spare, 0 to 1; 1 where no battery is read.</summary>
    public static double ComfortShare(ControlSettings settings, RigReadings readings) =>
        readings.TryGet(Channel.Battery, out double volts)
            ? Math.Clamp((volts - settings.Limits.BatteryLowV - NothingV) / (AllV - NothingV), 0, 1)
            : 1;
}
