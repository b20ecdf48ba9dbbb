using PileController.Physics.Heaps;
using PileController.Physics.Plants;

namespace PileController.Plans.Sketch;

/// <summary>The heap by itself.</summary>
internal static class HeapSketching
{
    private const double JoulesPerKWh = 3.6e6;

    public static SketchHeap Of(SketchTrials trials)
    {
        HeapBuild build = trials.Settings.Heap;
        HeapTrialResult trial = trials.Base;
        double dryKg = DryKg(build);
        double degradableKg = dryKg * (build.FastFraction + build.SlowFraction);
        return new SketchHeap(
            build.RadiusM, build.HeightM, build.WetMassKg, 100 * build.MoistureFraction, dryKg, degradableKg,
            degradableKg * Stuff.HeatPerSolids / JoulesPerKWh, VolumeM3(build), SurfaceM2(build),
            build.WetMassKg / BedM3(build), 100 * FreeAirSpace(build), trial.LitOnDay, trial.FadesOnDay, trial.WaterLostKg,
            build.DrumLitres, [.. trial.Weeks.Select(Week)]);
    }

    public static double DryKg(HeapBuild build) => build.WetMassKg * (1 - build.MoistureFraction);

    public static double VolumeM3(HeapBuild build) => Math.PI * build.RadiusM * build.RadiusM * build.HeightM;

    /// <summary>What is left for the chips beside the drum, m³.</summary>
    public static double BedM3(HeapBuild build) => VolumeM3(build) - (0.001 * build.DrumLitres);

    /// <summary>Share of the bed that is gas.</summary>
    public static double FreeAirSpace(HeapBuild build) => Math.Max(
        0, 1 - (((DryKg(build) / Stuff.SolidsKgPerM3) + (0.001 * build.WetMassKg * build.MoistureFraction)) / BedM3(build)));

    // Top and side; the ground is no surface the air touches.
    private static double SurfaceM2(HeapBuild build) =>
        Math.PI * build.RadiusM * (build.RadiusM + (2 * build.HeightM));

    private static SketchWeek Week(TrialWeek week) => new(
        week.Week, week.GeneratedWatts, week.LostWatts, week.DrawnWatts, week.ActiveZoneC, week.TurnsC);
}
