using PileController.Control.Decisions;
using PileController.Control.Metering;
using PileController.Control.Readings;
using PileController.Physics.Plants;

namespace PileController.Control.Allocation;

/// <summary>What each circuit could take from the heap now at most, from what the probes say.</summary>
/// <param name="WaterW">Coil at most flow, W.</param>
/// <param name="AirW">Ducts at full duty, W.</param>
internal readonly record struct Reach(double WaterW, double AirW)
{
    private const double DuctYield = 0.5;

    public static Reach Of(ControlSettings settings, RigReadings readings, in HeapEstimate estimate, double houseC)
    {
        double turns = estimate.TurnsCelsius;
        double back = readings.TryGet(Channel.Return, out double measured) ? Math.Max(measured, houseC) : houseC + 5;
        double carried = settings.MostFlowLitresPerMinute * Carriers.WaterJPerLK / 60;
        double effect = settings.CoilWPerK / (settings.CoilWPerK + carried);
        double water = Math.Max(0, carried * effect * (turns - back));
        double air = settings.BlowerFitted
            ? Math.Max(0, settings.BlowerFullFlowM3PerS * DuctBed.AirJPerM3K * DuctYield * (estimate.CoreCelsius - houseC))
            : 0;
        return new Reach(water, air);
    }
}
