using PileController.Physics.Fluids;
using PileController.Physics.Heaps;

namespace PileController.Physics.Tests.Heaps;

/// <summary>A heap so well wrapped, in air and over ground as warm as itself, that its heat has nowhere to go.</summary>
public class HeatUpTests
{
    private const double StartC = 40;

    private static readonly HeapBuild Wrapped = new()
    {
        BuildTemperatureC = StartC,
        CoverThicknessM = 1e6,
        DrumLitres = 0,
        Coil = new CoilBuild { LengthM = 0 },
        Duct = new DuctBuild { LengthM = 0, ThroughHeap = true },
    };

    // Saturated air as warm as the heap carries in what it carries out.
    private static readonly HeapSite Steam = new(StartC, 1, 0, StartC, 0.05);

    private static double CapacityJPerK => (4050 * 1400.0) + (4950 * 4186.0);

    [Fact]
    public void Warming_WithNowhereForHeatToGo_IsHeatMadeOverCapacity()
    {
        Heap heap = new(Wrapped);
        heap.StepSlow(60, Steam);

        // By hand for 9 t of 55 % water in 22.7 m³. Pools of 6 % and 45 % of the dry matter at 10 % and 0.9 % a day.
        double volumeM3 = Math.PI * 1.9 * 1.9 * 2;
        double gas = 1 - (((4050 / 1500.0) + (4950 / 1000.0)) / volumeM3);
        double slowdown = Microbes.Moisture(0.55) * Microbes.FreeAirSpace(gas);
        double warm = Microbes.Thermophilic.At(StartC);
        double mild = Microbes.Mesophilic.At(StartC);
        double wantedKgPerDay = 4050 * slowdown
            * ((0.06 * 0.10 * Math.Min(1, warm + (0.5 * mild))) + (0.45 * 0.009 * Math.Min(1, warm + (0.15 * mild))));

        // Air at 40 °C and 100 %: 1.049 kg of dry air in a cubic metre (ideal gases, 7384 Pa of vapour).
        double vapourPa = MoistAir.SaturationPressurePa(StartC);
        double dryKgPerM3 = (101_325 - vapourPa) / (287.05 * (StartC + 273.15));
        double supplyKgPerS = 0.2314 * 0.05 * dryKgPerM3;
        double oxygenPerSolids = 192.0 / 162;
        double takenKgPerS = HeapAir.TakenKgPerS(oxygenPerSolids * wantedKgPerDay / 86_400, supplyKgPerS);
        double madeJ = 60 * 17.0e6 * takenKgPerS / oxygenPerSolids;

        Assert.Equal(madeJ, heap.Ledger.GeneratedJ, 1e-3 * madeJ);

        // Solids that burn keep their warmth in what they become, so the rise is the heat made over what was there.
        Assert.Equal(madeJ / CapacityJPerK, heap.AtRadiusC(0.5) - StartC, 0.01 * madeJ / CapacityJPerK);
    }

    [Fact]
    public void Warming_OverADay_IsHeatMadeLessTheLittleThatLeft()
    {
        Heap heap = new(Wrapped);
        double beforeJ = heap.StoredJ;
        for (int minute = 0; minute < 1440; minute++)
        {
            heap.StepSlow(60, Steam);
        }

        HeapLedger sums = heap.Ledger;
        Assert.True(heap.AtRadiusC(0.5) > StartC + 2);
        Assert.InRange(Math.Abs(heap.StoredJ - beforeJ - (sums.GeneratedJ - sums.DrawnJ - sums.LostJ)) / sums.GeneratedJ, 0, 1e-9);
        Assert.InRange(sums.SideJ + sums.TopJ, 0, 1e-5 * sums.GeneratedJ);
    }

    [Fact]
    public void Temperature_WithNothingAliveAndNothingOutside_StaysEven()
    {
        Heap heap = new(Wrapped with { FastFraction = 0, SlowFraction = 0, PermeabilityM2 = 0 });
        HeapSite still = Steam with { BlowerM3PerS = 0 };
        for (int minute = 0; minute < 1440; minute++)
        {
            heap.StepSlow(60, still);
        }

        Assert.Equal(StartC, heap.AtRadiusC(0), 1e-9);
        Assert.Equal(StartC, heap.AtRadiusC(1.9), 1e-9);
        Assert.Equal(0, heap.Ledger.GeneratedJ);
    }
}
