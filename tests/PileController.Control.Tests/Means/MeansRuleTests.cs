using CsCheck;
using PileController.Control.Decisions;
using PileController.Control.Means;

namespace PileController.Control.Tests.Means;

public sealed class MeansRuleTests
{
    private static readonly ControlSettings Settings = new() { Confidence = 0.5 };

    [Fact]
    public void Of_HeatAboveTheFloorAndNoNetHeat_SpreadsItOverTheLookAhead()
    {
        // 10 K above 45 °C and the 1.5 K it still falls by itself, in 0.65 × 26 MJ/K: against frost over 0.3 of 48 h, for comfort, which leaves 8 K of it, over all.
        HeapMeans means = MeansRule.Of(Settings, Heap(56.5, 0), 56.5);

        Assert.Equal(0.65 * 2.6e7 * 10 / (0.3 * 172_800), means.FrostW, 1e-6);
        Assert.Equal(0.65 * 2.6e7 * 2 / 172_800, means.ComfortW, 1e-6);
    }

    [Fact]
    public void Of_NetHeatFarAboveTheFloor_CountsInFull() =>
        Assert.Equal(500, MeansRule.Of(Settings, Heap(55, 500), 55).FrostW - MeansRule.Of(Settings, Heap(55, 0), 55).FrostW, 1e-6);

    [Fact]
    public void Of_NetHeatNearTheFloor_CountsByHowFarAboveTheHeapStands() =>
        Assert.Equal(250, MeansRule.Of(Settings, Heap(50.5, 500), 50.5).FrostW - MeansRule.Of(Settings, Heap(50.5, 0), 50.5).FrostW, 1e-6);

    [Fact]
    public void Of_HeapThatCoolsByItself_CountsTheLossInFull() =>
        Assert.Equal(
            (0.65 * 2.6e7 * 4 / (0.3 * 172_800)) - 200, MeansRule.Of(Settings, Heap(50.5, -200), 50.5).FrostW, 1e-6);

    [Theory]
    [InlineData(45, 60)]
    [InlineData(60, 45)]
    [InlineData(30, 30)]
    public void Of_ZoneOrBodyAtTheFloor_IsNothing(double zone, double body) =>
        Assert.Equal(default, MeansRule.Of(Settings, Heap(zone, 1000), body));

    [Fact]
    public void Of_UnsureEstimate_TakesTheMarginOff()
    {
        ControlSettings sure = Settings with { Confidence = 0.95 };

        // 1.6449 standard deviations of 2 K: the one-sided 95 % point of the normal distribution (any table).
        Assert.Equal(
            MeansRule.Of(Settings, Heap(55 - (2 * 1.6449), 0), 60).FrostW,
            MeansRule.Of(sure, Heap(55, 0) with { UncertaintyKelvin = 2 }, 60).FrostW, 1e-6);
    }

    // Normal distribution, one-sided points: NIST/SEMATECH e-Handbook, section 1.3.6.7.1 (from memory).
    [Theory]
    [InlineData(0.5, 0)]
    [InlineData(0.8, 0.8416)]
    [InlineData(0.95, 1.6449)]
    [InlineData(0.999, 3.0902)]
    public void Quantile_TabledPoint_IsTheTable(double confidence, double expected) =>
        Assert.Equal(expected, MeansRule.Quantile(confidence), 1e-4);

    [Fact]
    public void Of_AnyHeap_WarmerBearsNoLessAndComfortNeverMoreThanFrost() =>
        Gen.Select(Gen.Double[20, 80], Gen.Double[0, 10], Gen.Double[-3000, 5000], Gen.Double[0, 5]).Sample(
            (zone, warmer, net, sigma) =>
            {
                HeapMeans cool = MeansRule.Of(Settings, Heap(zone, net) with { UncertaintyKelvin = sigma }, zone);
                HeapMeans warm = MeansRule.Of(Settings, Heap(zone + warmer, net) with { UncertaintyKelvin = sigma }, zone + warmer);
                return warm.FrostW >= cool.FrostW && cool.ComfortW <= cool.FrostW && cool.ComfortW >= 0;
            });

    private static HeapEstimate Heap(double zone, double net) => new(zone, zone, zone, 0, net, 0, 0, true, true);
}
