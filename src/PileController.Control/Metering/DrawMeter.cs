using PileController.Control.Decisions;
using PileController.Control.Readings;
using PileController.Physics.Fluids;
using PileController.Physics.Plants;

namespace PileController.Control.Metering;

/// <summary>
/// Heat taken from the heap, as a heat meter finds it (EN 1434): volume × density at the meter × difference of
/// enthalpy, with the error that meter and probe pair allow.
/// </summary>
public static class DrawMeter
{
    // Where a probe or the meter is missing the figure is inferred from what the controller was told, to a third.
    private const double InferredErrorShare = 0.33;

    // Share of the way from house to core that duct air warms, as the allocation reckons it too.
    private const double DuctYield = 0.5;

    /// <summary>Meters one tick.</summary>
    /// <param name="settings">Errors of the meter, and what is told of coil and pump.</param>
    /// <param name="readings">Validated readings.</param>
    /// <param name="running">What the actuators were told the tick before.</param>
    public static MeteredDraw Of(ControlSettings settings, RigReadings readings, in Outputs running)
    {
        bool flowKnown = readings.TryGet(Channel.Flow, out double flow);
        if (!flowKnown)
        {
            flow = settings.Loop.FlowLitresPerMinute(running.PumpDuty, running.ValveOpening);
        }

        double air = AirWatts(settings, readings, running, out bool airInferred);
        if (flow <= 0)
        {
            return new MeteredDraw(0, 0, air, 0, airInferred || (!flowKnown && running.PumpDuty > 0));
        }

        bool supplyKnown = readings.TryGet(Channel.Supply, out double supply);
        bool returnKnown = readings.TryGet(Channel.Return, out double back);
        if (supplyKnown && returnKnown)
        {
            double cold = Math.Clamp(back, 0, 95);
            double watts = Water.DrawWatts(flow, cold, Math.Clamp(supply, 0, 95), cold);
            double share = flowKnown ? settings.FlowErrorShare : InferredErrorShare;
            double error = (Math.Abs(watts) * share) + (flow * Carriers.WaterJPerLK / 60 * settings.PairErrorKelvin);
            return new MeteredDraw(watts, error, air, flow, airInferred || !flowKnown);
        }

        if (!readings.TryGet(Channel.HeapTurns, out double turns) || (!supplyKnown && !returnKnown))
        {
            return new MeteredDraw(0, flow * Carriers.WaterJPerLK / 60 * 10, air, flow, true);
        }

        double carried = flow * Carriers.WaterJPerLK / 60;
        double inferred = returnKnown
            ? carried * settings.CoilWPerK / (settings.CoilWPerK + carried) * (turns - back)
            : FromSupply(settings, carried, supply, turns);
        return new MeteredDraw(inferred, Math.Abs(inferred) * InferredErrorShare, air, flow, true);
    }

    // What the bed is warmer than the supply, the coil could not give. The water came back as liquid, which bounds it
    // where it hardly moves.
    private static double FromSupply(ControlSettings settings, double carried, double supply, double turns) => Math.Clamp(
        settings.CoilWPerK * (turns - supply), -carried * (Water.HighestC - supply), carried * Math.Max(Water.LowestC, supply));

    private static double AirWatts(ControlSettings settings, RigReadings readings, in Outputs running, out bool inferred)
    {
        inferred = false;
        if (!settings.BlowerFitted || running.BlowerDuty <= 0)
        {
            return 0;
        }

        bool ductKnown = readings.TryGet(Channel.DuctAir, out double duct);
        bool houseKnown = readings.TryGet(Channel.House, out double house);
        inferred = !ductKnown || !houseKnown;
        if (!houseKnown)
        {
            return 0;
        }

        if (!ductKnown)
        {
            if (!readings.TryGet(Channel.HeapCore, out double core))
            {
                return 0;
            }

            duct = house + (DuctYield * (core - house));
        }

        return running.BlowerDuty * settings.BlowerFullFlowM3PerS * DuctBed.AirJPerM3K * (duct - house);
    }
}
