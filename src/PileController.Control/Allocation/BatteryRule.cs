using PileController.Control.Readings;
using PileController.Control.Regulation;

namespace PileController.Control.Allocation;

/// <summary>What the battery leaves for comfort, whose last part is kept for frost, and for the blower against frost.</summary>
internal static class BatteryRule
{
    // Above the voltage that holds the blower off, V: from the first comfort gets nothing, from the second all. At rest a
    // lead battery stands at about 12.2 V half charged (common practice, no source).
    private const double NothingV = 0.3;
    private const double AllV = 0.6;

    // The same for ducts that carry more heat for their power than the water does: they stop last.
    private const double NoAirV = 0.2;
    private const double AllAirV = 0.3;

    // The same again: from the first to the second comfort drives pump and blower ever harder. What a pump or a blower takes
    // goes with the cube of its duty and what it brings far less than with the duty itself, so a battery that is not full
    // gives most heat where both go gently all day (from seasons of the simulated holding).
    private const double GentlestV = 0.4;
    private const double BriskestV = 0.8;

    // Against frost the blower eases off just above the voltage that holds it off: what it takes at full duty would keep the
    // pump going for hours, and to be held off until the battery has recovered costs the whole night.
    private const double NoFrostAirV = 0.02;
    private const double AllFrostAirV = 0.12;

    /// <summary>What the battery leaves now: all of it where none is read.</summary>
    /// <param name="settings">Pump, blower and the voltage that holds the blower off.</param>
    /// <param name="readings">Validated readings.</param>
    public static BatteryLeave Of(ControlSettings settings, RigReadings readings) => new(
        Between(settings, readings, NothingV, AllV), Between(settings, readings, NoAirV, AllAirV),
        Between(settings, readings, GentlestV, BriskestV), Between(settings, readings, NoFrostAirV, AllFrostAirV));

    /// <summary>
    /// Share of what comfort wants that the ducts may give. Where air carries more heat for its power than water does, they go
    /// on when the water has stopped: a pump that knows full power only takes in an hour what the blower, going gently, takes
    /// in most of a day.
    /// </summary>
    /// <param name="settings">Pump and blower.</param>
    /// <param name="reach">What each circuit could take.</param>
    /// <param name="leave">What the battery leaves.</param>
    public static double AirShare(ControlSettings settings, in Reach reach, in BatteryLeave leave)
    {
        double airWatts = settings.BlowerWatts * Cube(BlowerRegulator.GentleDuty(leave.Briskness));
        double pumpWatts = settings.PumpWatts * Cube(PumpRegulator.GentlestDuty(settings));
        return reach.GentleAirW * pumpWatts > reach.WaterW * airWatts ? leave.AirShare : leave.ComfortShare;
    }

    private static double Between(ControlSettings settings, RigReadings readings, double fromV, double toV) =>
        readings.TryGet(Channel.Battery, out double volts)
            ? Math.Clamp((volts - settings.Limits.BatteryLowV - fromV) / (toV - fromV), 0, 1)
            : 1;

    // What a pump or a blower takes goes with the cube of its duty.
    private static double Cube(double duty) => duty * duty * duty;
}
