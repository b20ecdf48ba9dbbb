using PileController.Physics.Exchangers;
using PileController.Physics.Fluids;
using PileController.Physics.Heaps;
using PileController.Physics.Plants;
using PileController.Settings.Checks;

namespace PileController.Plans.Sketch;

/// <summary>What the turns can take. Conduction in the bed is the limit.</summary>
internal static class CoilSketching
{
    private const double BedC = 55;
    private const double HourSeconds = 3600;
    private const double MonthSeconds = 30 * 86_400;

    // Turns nearer to the rim than this lie in the cover (common practice, no source).
    private const double RimM = 0.15;
    private const int MostPlaces = 7;

    public static SketchCoil Of(SketchTrials trials)
    {
        HeapBuild build = trials.Settings.Heap;
        CoilBuild coil = build.Coil;
        return new SketchCoil(
            coil.RadiusM, coil.LengthM, Turns(coil), coil.OuterDiameterM, ConductanceWPerK(build, HourSeconds),
            ConductanceWPerK(build, MonthSeconds), trials.Base.DrawnWatts, Places(trials));
    }

    public static double Turns(CoilBuild coil) => coil.LengthM > 0 ? coil.LengthM / (2 * Math.PI * coil.RadiusM) : 0;

    /// <summary>Pipe wall and a wide bed round it, cooled for a time, W/K for the whole coil.</summary>
    public static double ConductanceWPerK(HeapBuild build, double seconds)
    {
        if (build.Coil.LengthM <= 0)
        {
            return 0;
        }

        double bedM3 = HeapSketching.BedM3(build);
        double waterKgPerM3 = build.WetMassKg * build.MoistureFraction / bedM3;
        double dryKgPerM3 = HeapSketching.DryKg(build) / bedM3;
        double conductivity = Stuff.ConductivityWPerMK(
            waterKgPerM3, HeapSketching.FreeAirSpace(build), BedC, MoistAir.SaturationPressurePa(BedC));
        double capacity = (waterKgPerM3 * Stuff.WaterJPerKgK) + (dryKgPerM3 * Stuff.SolidsJPerKgK);
        double bed = build.Coil.LengthM * Surroundings.LineSourceWPerMK(
            0.5 * build.Coil.OuterDiameterM, conductivity, capacity, seconds);
        return 1 / ((1 / bed) + LoopCircuit.PipeWallKPerW(build.Coil));
    }

    // Through the middles of shells, since the heap knows no finer place; where the turns would be too close, none.
    private static List<SketchPlace> Places(SketchTrials trials)
    {
        HeapBuild build = trials.Settings.Heap;
        List<SketchPlace> places = [];
        if (build.Coil.LengthM <= 0)
        {
            return places;
        }

        RadialGrid grid = new Heap(build).Grid;
        double[] fit = [.. grid.CentreM.Where(r => r <= build.RadiusM - RimM && Fits(build, r))];
        int stride = Math.Max(1, (int)Math.Ceiling(fit.Length / (double)MostPlaces));
        for (int i = fit.Length - 1; i >= 0; i -= stride)
        {
            places.Insert(0, new SketchPlace(fit[i], trials.Run(At(build, fit[i]), trials.Draw).DrawnWatts));
        }

        return places;
    }

    public static HeapBuild At(HeapBuild build, double radiusM) => build with { Coil = build.Coil with { RadiusM = radiusM } };

    private static bool Fits(HeapBuild build, double radiusM) => build.Coil.LengthM <= HeapChecks.LongestCoilM(At(build, radiusM));
}
