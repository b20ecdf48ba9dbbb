using PileController.Physics.Heaps;

namespace PileController.Physics.Tests.Heaps;

/// <summary>The bed's answer to a draw, foretold, and wetting.</summary>
public class WallAnswerTests
{
    [Theory]
    [InlineData(10, 300)]
    [InlineData(300, 900)]
    [InlineData(1800, 1500)]
    public void Wall_AfterAQuickStep_StandsWhereItWasForetold(double seconds, double watts)
    {
        Heap heap = new(new HeapBuild { BuildTemperatureC = 55 });
        (double undrawnC, double kelvinPerWatt) = heap.WallAfter(seconds);

        heap.StepQuick(seconds, watts * seconds, 0, 0);

        Assert.Equal(55, undrawnC, 9);
        Assert.True(kelvinPerWatt > 0);
        Assert.Equal(undrawnC - (kelvinPerWatt * watts), heap.WallC, 6);
    }

    [Fact]
    public void Wall_WithoutACoil_IsTheShellAndAnswersNothing()
    {
        Heap heap = new(new HeapBuild { BuildTemperatureC = 40, Coil = new CoilBuild { LengthM = 0 } });

        Assert.Equal((40.0, 0.0), (Math.Round(heap.WallAfter(60).UndrawnC, 9), heap.WallAfter(60).KelvinPerWatt));
    }

    [Fact]
    public void Wet_WithCoolWater_MixesByHeatCapacity()
    {
        Heap heap = new(new HeapBuild { BuildTemperatureC = 50, DrumLitres = 0 });
        double stored = heap.StoredJ;
        double water = heap.WaterKg;
        double brought = heap.Wet(200, 10);

        double dryJPerK = heap.DryKg * Stuff.SolidsJPerKgK;
        double mixedC = (((dryJPerK + (water * Stuff.WaterJPerKgK)) * 50) + (200 * Stuff.WaterJPerKgK * 10))
            / (dryJPerK + ((water + 200) * Stuff.WaterJPerKgK));
        Assert.Equal(water + 200, heap.WaterKg, 6);
        Assert.Equal(200 * Stuff.WaterJPerKgK * 10, brought, 3);
        Assert.Equal(stored + brought, heap.StoredJ, 1e-9 * stored);
        Assert.Equal(mixedC, heap.ActiveZoneC, 6);
    }

    [Fact]
    public void Wet_WithLessThanNothing_IsRefused() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => new Heap(new HeapBuild()).Wet(-1, 10));
}
