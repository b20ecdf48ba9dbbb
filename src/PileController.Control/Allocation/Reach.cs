using PileController.Control.Decisions;
using PileController.Control.Metering;
using PileController.Control.Readings;
using PileController.Control.Regulation;
using PileController.Physics.Plants;

namespace PileController.Control.Allocation;

/// <summary>What each circuit could take from the heap now at most, from what the probes say.</summary>
/// <param name="WaterW">Coil at most flow, W.</param>
/// <param name="AirW">Ducts at full duty, W.</param>
/// <param name="GentleWaterW">Coil as comfort has it, W: no more than <paramref name="WaterW"/>.</param>
/// <param name="GentleAirW">Ducts as comfort has them, W: no more than <paramref name="AirW"/>, none of air that is drawn through the heap, since it dries it.</param>
internal readonly record struct Reach(double WaterW, double AirW, double GentleWaterW, double GentleAirW)
{
    private const double DuctYield = 0.5;

    /// <summary>Finds the reach.</summary>
    /// <param name="settings">Coil, ducts, pump and blower.</param>
    /// <param name="readings">Validated readings.</param>
    /// <param name="estimate">What is believed of the heap.</param>
    /// <param name="houseC">House air, °C.</param>
    /// <param name="regulators">What a litre carries, as the pump's regulator has learned it.</param>
    /// <param name="briskness">How hard comfort may drive pump and blower, 0 to 1.</param>
    public static Reach Of(
        ControlSettings settings, RigReadings readings, in HeapEstimate estimate, double houseC, in RegulatorMemory regulators,
        double briskness)
    {
        double turns = estimate.TurnsCelsius;
        double back = readings.TryGet(Channel.Return, out double measured) ? Math.Max(measured, houseC) : houseC + 5;
        double carried = settings.MostFlowLitresPerMinute * Carriers.WaterJPerLK / 60;
        double effect = settings.CoilWPerK / (settings.CoilWPerK + carried);
        double water = Math.Max(0, carried * effect * (turns - back));
        double air = settings.BlowerFitted
            ? Math.Max(0, settings.BlowerFullFlowM3PerS * DuctBed.AirJPerM3K * DuctYield * (estimate.CoreCelsius - houseC))
            : 0;
        double gentleWater = Math.Min(water, PumpRegulator.GentleWatts(settings, regulators, briskness));
        double gentleAir = settings.DuctWPerK > 0 ? BlowerRegulator.GentleDuty(briskness) * air : 0;
        return new Reach(water, air, gentleWater, gentleAir);
    }
}
