using PileController.Physics.Fluids;
using PileController.Physics.Heaps;

namespace PileController.Physics.Tests.Heaps;

/// <summary>What leaves an even, dead heap in its first minute, against the series of resistances worked by hand.</summary>
public class HeapLossTests
{
    private const double HeapC = 45;
    private const double OutsideC = 5;
    private const double GroundC = 9;
    private const double WindMPerS = 2;

    private static readonly HeapBuild Dead = new()
    {
        FastFraction = 0,
        SlowFraction = 0,
        PermeabilityM2 = 0,
        BuildTemperatureC = HeapC,
        DrumLitres = 0,
        Coil = new CoilBuild { LengthM = 0 },
        Duct = new DuctBuild { LengthM = 0 },
    };

    private static double WPerMK => WPerMKWith(0);

    // Cover of 0.15 m at 0.08 W/(m·K); film of 6 + 3·wind W/(m²·K).
    private static double OuterM2KPerW => (0.15 / 0.08) + (1 / (6 + (3 * WindMPerS)));

    private static double PlanM2 => Math.PI * 1.9 * 1.9;

    [Fact]
    public void Side_OfAnEvenHeap_LosesThroughHalfAShellCoverAndFilm()
    {
        double halfShellM = 0.5 * 1.9 / 14;
        double watts = 2 * Math.PI * 1.9 * 2 * (HeapC - OutsideC) / ((halfShellM / WPerMK) + OuterM2KPerW);
        AssertNear(watts, FirstMinute().SideJ / 60);
    }

    [Fact]
    public void Top_OfAnEvenHeap_LosesThroughAQuarterOfItsHeightCoverAndFilm() =>
        AssertNear(PlanM2 * (HeapC - OutsideC) / ((0.5 / WPerMK) + OuterM2KPerW), FirstMinute().TopJ / 60);

    [Fact]
    public void Ground_OfAnEvenHeap_TakesThroughAQuarterOfItsHeightAndTheSoil() =>
        AssertNear(PlanM2 * (HeapC - GroundC) / ((0.5 / WPerMK) + 1.5), FirstMinute().GroundJ / 60);

    [Fact]
    public void Wind_OverTheHeap_TakesMoreFromItsSide()
    {
        Heap still = new(Dead);
        still.StepSlow(60, new HeapSite(OutsideC, 0.8, 0, GroundC, 0));
        Assert.True(FirstMinute().SideJ > still.Ledger.SideJ);
    }

    [Fact]
    public void Drum_InAWarmerBed_TakesWhatItsFaceLetsThrough()
    {
        // A drum at the bed's temperature is cooled by 100 kJ, then warms by conduction over half a shell.
        Heap heap = new(Dead with { DrumLitres = 200 });
        double edgeM = Math.Sqrt(0.2 / (Math.PI * 2));
        heap.StepQuick(10, 0, 1e5, 0);
        double coldK = HeapC - heap.DrumC;
        Assert.Equal(1e5 / (200 * 4186), coldK, 1e-9);

        double beforeC = heap.DrumC;
        heap.StepSlow(60, new HeapSite(OutsideC, 0.8, WindMPerS, GroundC, 0));
        double facingWPerK = 2 * Math.PI * edgeM * 2 * WPerMKWith(200) / (0.5 * (1.9 - edgeM) / 14);
        Assert.Equal(60 * facingWPerK * coldK / (200 * 4186), heap.DrumC - beforeC, 0.02 * 60 * facingWPerK * coldK / (200 * 4186));
    }

    private static double WPerMKWith(double drumLitres)
    {
        double volumeM3 = (Math.PI * 1.9 * 1.9 * 2) - (drumLitres / 1000);
        double gas = 1 - (((4050 / 1500.0) + (4950 / 1000.0)) / volumeM3);
        return Stuff.ConductivityWPerMK(4950 / volumeM3, gas, HeapC, MoistAir.SaturationPressurePa(HeapC));
    }

    private static HeapLedger FirstMinute()
    {
        Heap heap = new(Dead);
        heap.StepSlow(60, new HeapSite(OutsideC, 0.8, WindMPerS, GroundC, 0));
        return heap.Ledger;
    }

    // Half a per cent: the rim cools a little within the minute.
    private static void AssertNear(double watts, double found) => Assert.Equal(watts, found, 0.005 * watts);
}
