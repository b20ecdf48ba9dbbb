using PileController.Physics.Fluids;
using PileController.Physics.Heaps;

namespace PileController.Physics.Plants;

/// <summary>
/// What the air of the house holds of water and carbon dioxide. A stand-in for the demo: no store of its own, in balance at
/// every moment between leaks and vents, plants and soil, and what comes over from the heap. Nothing of the plant hangs on it.
/// </summary>
internal static class HouseAir
{
    // Of the air outside, ppm by volume (from memory, for the 2020s).
    private const double OutsidePpm = 425;

    // Water that leaves plants and soil, kg/(s·m²) of floor: some grams an hour by night, and by day a fifth of the sun's
    // heat (common practice, no source).
    private const double EvaporationKgPerSM2 = 5e-3 / 3600;
    private const double SunShare = 0.2;

    // Carbon dioxide of roots and soil, m³/(s·m²) of floor, and what leaves take up at 1 W/m² of sun: 0.3 g and, in full sun
    // of 700 W/m², 1.5 g an hour (common practice, no source).
    private const double BreathM3PerSM2 = 0.3e-3 / 3600 / GasKgPerM3;
    private const double UptakeM3PerJ = 1.5e-3 / 3600 / 700 / GasKgPerM3;

    // Below this leaves take up no more (from memory).
    private const double LeastPpm = 60;

    // Heat a cubic metre of busy heap makes, W, and what share of its gas finds its way into the house: past the pipes
    // always, and most of it where the blower draws through the heap (common practice, no source).
    private const double HeapWPerM3 = 100;
    private const double LeakShare = 0.02;
    private const double BlownShare = 0.8;

    private const double GasKgPerM3 = 1.84;
    private const double AirKgPerM3 = 1.2;
    private const double LeastAirM3PerS = 1e-3;

    /// <summary>Relative humidity, % (0 to 100).</summary>
    /// <param name="build">The holding.</param>
    /// <param name="houseC">House air, °C.</param>
    /// <param name="sky">Weather.</param>
    /// <param name="blows">Whether the blower runs.</param>
    public static double HumidityPercent(PlantBuild build, double houseC, in Sky.Weather.WeatherSample sky, bool blows)
    {
        double most = Saturated(houseC);
        double carried = AirKgPerM3 * FreshM3PerS(build, houseC);
        double given = build.House.FloorAreaM2
            * (EvaporationKgPerSM2 + (SunShare * sky.SunWPerM2 * build.House.SolarGain / MoistAir.EvaporationJPerKg));

        // What comes through the heap is cooled on its way, and arrives wet.
        double blown = AirKgPerM3 * Blown(build, blows);
        double ratio = ((carried * sky.Humidity * Saturated(sky.OutsideC)) + (blown * most) + given) / (carried + blown);
        return 100 * Math.Clamp(ratio / most, 0, 1);
    }

    /// <summary>Carbon dioxide, ppm by volume (60 to 40,000).</summary>
    /// <param name="build">The holding.</param>
    /// <param name="houseC">House air, °C.</param>
    /// <param name="heapC">The heap's active zone, °C.</param>
    /// <param name="sky">Weather.</param>
    /// <param name="blows">Whether the blower runs.</param>
    public static double CarbonDioxidePpm(PlantBuild build, double houseC, double heapC, in Sky.Weather.WeatherSample sky, bool blows)
    {
        HeapBuild heap = build.Heap;
        double heapW = HeapWPerM3 * Math.PI * heap.RadiusM * heap.RadiusM * heap.HeightM * Microbes.Thermophilic.At(heapC);
        double gas = heapW * Stuff.CarbonDioxidePerSolids / Stuff.HeatPerSolids / GasKgPerM3;
        double share = heap.Duct.ThroughHeap && blows ? BlownShare : LeakShare;
        double house = build.House.FloorAreaM2 * (BreathM3PerSM2 - (UptakeM3PerJ * sky.SunWPerM2));
        double fresh = FreshM3PerS(build, houseC) + Blown(build, blows);
        return Math.Clamp(OutsidePpm + (1e6 * ((share * gas) + house) / fresh), LeastPpm, 40_000);
    }

    private static double FreshM3PerS(PlantBuild build, double houseC) => Math.Max(
        LeastAirM3PerS,
        (build.House.VolumeM3 * build.House.AirChangesPerHour / 3600) + (Dwelling.VentWPerK(build.House, houseC) / DuctBed.AirJPerM3K));

    private static double Blown(PlantBuild build, bool blows) =>
        build.Heap.Duct.ThroughHeap && blows ? build.Heap.Duct.FullFlowM3PerS : 0;

    private static double Saturated(double celsius) => MoistAir.HumidityRatio(
        MoistAir.SaturationPressureFastPa(Math.Clamp(celsius, -40, 90)), MoistAir.StandardPressurePa);
}
