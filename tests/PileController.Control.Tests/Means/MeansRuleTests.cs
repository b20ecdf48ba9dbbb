using CsCheck;
using PileController.Control.Decisions;
using PileController.Control.Means;

namespace PileController.Control.Tests.Means;

public sealed class MeansRuleTests
{
    private static readonly ControlSettings Settings = new() { Confidence = 0.5 };

    [Fact]
    public void Of_HeatAboveTheFloor_IsThereAgainstFrostWithinHours()
    {
        // 10 K above 45 °C and the 0.25 K it still falls by itself, in 0.65 × 26 MJ/K, over 3 h.
        HeapMeans means = Of(Settings, Heap(55.25, 0), 4);

        Assert.Equal(0.65 * 2.6e7 * 10 / 10_800, means.FrostW, 1e-6);
    }

    [Fact]
    public void Of_HeatAboveTheReserve_IsThereForComfortWithinHalfADay() =>
        Assert.Equal(300 + (0.65 * 2.6e7 * 6 / 43_200), Of(Settings, Heap(55, 300), 4).ComfortW, 1e-6);

    [Fact]
    public void Of_HeapBelowItsReserve_HasNothingForComfort() =>
        Assert.Equal(0, Of(Settings, Heap(55, 900), 10).ComfortW);

    [Fact]
    public void Of_ZoneThatFallsOnAtRest_CountsFromWhereItWouldEnd() =>
        Assert.Equal(Of(Settings, Heap(49, 0), 4).FrostW, MeansRule.Of(Settings, Heap(52, 0), 49, 4, 0).FrostW, 1e-6);

    [Theory]
    [InlineData(0, 0)]
    [InlineData(0.65 * 2.6e7 * 2, 2)]
    [InlineData(0.65 * 2.6e7 * 20, 5)]
    public void Of_ColdHoursAhead_KeepWhatTheFrostGuardWillTake(double guardJ, double kelvin) => Assert.Equal(
        Of(Settings, Heap(52 - kelvin, 0), 4).FrostW, MeansRule.Of(Settings, Heap(52, 0), 52, 4, guardJ).FrostW, 1e-6);

    [Fact]
    public void Of_EstimateInDoubt_IsSpentSlowlyAndKeepsMore()
    {
        // 10 K above 45 °C and 1.5 K, over 0.3 of 48 h.
        HeapMeans means = Of(Settings, Heap(56.5, 0) with { Trusted = false }, 4);

        Assert.Equal(0.65 * 2.6e7 * 10 / (0.3 * 172_800), means.FrostW, 1e-6);
    }

    [Fact]
    public void Of_EstimateInDoubt_ComfortLeavesEightKelvinMoreAndWhatItMayBeWrongBy()
    {
        ControlSettings sure = Settings with { Confidence = 0.95 };
        HeapEstimate doubted = Heap(62, 0) with { Trusted = false, UncertaintyKelvin = 1 };

        Assert.Equal(Of(sure, Heap(62 - 8 - 1.6449, 0), 4).ComfortW, Of(sure, doubted, 4).ComfortW, 1e-6);
        Assert.Equal(0, Of(sure, doubted, 8).ComfortW);
    }

    [Fact]
    public void Of_NetHeatFarAboveTheFloor_CountsInFull() =>
        Assert.Equal(500, Of(Settings, Heap(55, 500), 4).FrostW - Of(Settings, Heap(55, 0), 4).FrostW, 1e-6);

    [Fact]
    public void Of_NetHeatNearTheFloor_CountsByHowFarAboveTheHeapStands() =>
        Assert.Equal(250, Of(Settings, Heap(49.25, 500), 4).FrostW - Of(Settings, Heap(49.25, 0), 4).FrostW, 1e-6);

    [Fact]
    public void Of_HeapThatCoolsByItself_CountsTheLossInFull() =>
        Assert.Equal((0.65 * 2.6e7 * 4 / 10_800) - 200, Of(Settings, Heap(49.25, -200), 4).FrostW, 1e-6);

    [Theory]
    [InlineData(45)]
    [InlineData(30)]
    public void Of_ZoneAtTheFloor_IsNothing(double zone) => Assert.Equal(default, Of(Settings, Heap(zone, 1000), 4));

    [Fact]
    public void Of_UnsureEstimate_TakesTheMarginOff()
    {
        ControlSettings sure = Settings with { Confidence = 0.95 };

        // 1.6449 standard deviations of 2 K: the one-sided 95 % point of the normal distribution (any table).
        Assert.Equal(
            Of(Settings, Heap(55 - (2 * 1.6449), 0), 4).FrostW,
            Of(sure, Heap(55, 0) with { UncertaintyKelvin = 2 }, 4).FrostW, 1e-6);
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
                HeapMeans cool = Of(Settings, Heap(zone, net) with { UncertaintyKelvin = sigma }, 4);
                HeapMeans warm = Of(Settings, Heap(zone + warmer, net) with { UncertaintyKelvin = sigma }, 4);
                return warm.FrostW >= cool.FrostW && cool.ComfortW <= cool.FrostW && cool.ComfortW >= 0;
            });

    private static HeapMeans Of(ControlSettings settings, HeapEstimate heap, double reserveKelvin) =>
        MeansRule.Of(settings, heap, heap.ActiveZoneCelsius, reserveKelvin, 0);

    private static HeapEstimate Heap(double zone, double net) => new(zone, zone, zone, 0, net, 0, 0, true, true);
}
