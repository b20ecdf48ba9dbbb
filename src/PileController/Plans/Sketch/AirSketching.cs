using PileController.Physics.Exchangers;
using PileController.Physics.Heaps;
using PileController.Physics.Plants;

namespace PileController.Plans.Sketch;

/// <summary>The blower's air in a closed duct beside the same air drawn through the heap.</summary>
internal static class AirSketching
{
    private const double DaySeconds = 86_400;

    // Air of the house, half moist, that goes round through the heap (common practice, no source).
    private const double HouseHumidity = 0.5;

    public static SketchAir Of(SketchTrials trials)
    {
        DuctBuild duct = trials.Settings.Heap.Duct;
        double heapC = HeapC(trials.Base);
        double houseC = trials.Settings.Control.HouseNightC;
        double flow = duct.FullFlowM3PerS;
        double closed = duct.LengthM > 0 && flow > 0
            ? new ClosedDuct(duct.LengthM, duct.DiameterM).HeatWatts(flow, houseC, heapC, DuctBed.BedWPerM(duct.DiameterM))
            : 0;
        double carried = flow > 0 ? ClosedDuct.CapacityRateWPerK(flow, houseC) : 0;

        ThroughAir through = ThroughAir.Of(flow, houseC, HouseHumidity, heapC);
        return new SketchAir(
            flow, closed, carried > 0 ? houseC + (closed / carried) : houseC, through.SensibleWatts, through.LatentWatts,
            through.WaterLostKgPerDay, through.OxygenSuppliedKgPerDay,
            trials.Base.GeneratedWatts / Stuff.HeatPerSolids * Stuff.OxygenPerSolids * DaySeconds);
    }

    // The active zone while the heap works: the mean of the weeks after lighting, or of all when it never lit.
    private static double HeapC(HeapTrialResult trial)
    {
        double[] after = [.. trial.Weeks.Where(w => w.Week * 7 > (trial.LitOnDay ?? double.MaxValue)).Select(w => w.ActiveZoneC)];
        return Math.Clamp(after.Length > 0 ? after.Average() : trial.Weeks.Average(w => w.ActiveZoneC), 1, 80);
    }
}
