using PileController.Control.Means;
using PileController.Control.Readings;
using PileController.Control.Regulation;

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

    /// <summary>
    /// The same for what the ducts may give: all, as long as there is any to spare, where air carries more heat for its
    /// power than water does. A pump that knows full power only takes in an hour what the blower, going gently, takes in most of a day.
    /// </summary>
    /// <param name="settings">Pump and blower.</param>
    /// <param name="reach">What each circuit could take.</param>
    /// <param name="comfortShare">Share of what comfort wants that the battery has to spare, 0 to 1.</param>
    public static double AirShare(ControlSettings settings, in Reach reach, double comfortShare)
    {
        double gentle = MeansRule.ComfortAirShare(settings);
        double airWatts = settings.BlowerWatts * Cube(gentle);
        double pumpWatts = settings.PumpWatts * Cube(PumpRegulator.GentlestDuty(settings));
        return comfortShare > 0 && gentle * reach.AirW * pumpWatts > reach.WaterW * airWatts ? 1 : comfortShare;
    }

    // What a pump or a blower takes goes with the cube of its duty.
    private static double Cube(double duty) => duty * duty * duty;
}
