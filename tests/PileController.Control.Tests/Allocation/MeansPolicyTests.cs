using PileController.Control.Allocation;
using PileController.Control.Decisions;

namespace PileController.Control.Tests.Allocation;

public sealed class MeansPolicyTests
{
    private static readonly ControlSettings Settings = new() { Confidence = 0.5 };
    private static readonly Reach Wide = new(20_000, 2000);

    [Fact]
    public void Decide_WarmHeapAndSmallWant_GivesAllThatIsWanted()
    {
        Grant grant = Decide(Heap(56, 1000), house: 10, outside: 9);

        Assert.Equal(Curb.None, grant.Curb);
        Assert.Equal(grant.WantW, grant.WaterW, 1e-9);
    }

    [Fact]
    public void Decide_WantBeyondTheMeans_GivesTheMeans()
    {
        Grant grant = Decide(Heap(50, 0), house: 4, outside: -10);

        Assert.Equal(Curb.Means, grant.Curb);
        Assert.Equal(grant.MeansW, grant.TotalW, 1e-9);
        Assert.True(grant.Urgent);
    }

    [Fact]
    public void Decide_ComfortWithoutReserve_IsKeptForAColderHour()
    {
        Grant grant = Decide(Heap(52, 0), house: 9, outside: 6);

        Assert.Equal(Curb.Saving, grant.Curb);
        Assert.True(grant.TotalW < grant.WantW);
        Assert.True(grant.MeansW > 0);
    }

    [Fact]
    public void Decide_NotLit_GivesNothing()
    {
        Grant grant = Decide(Heap(60, 3000) with { Lit = false }, house: 0, outside: -10);

        Assert.Equal(0, grant.TotalW);
        Assert.Equal(Curb.NotLit, grant.Curb);
    }

    [Fact]
    public void Decide_AtTheFloor_GivesNothingAndSaysSo()
    {
        Grant grant = Decide(Heap(45, 3000), house: 0, outside: -10);

        Assert.Equal(0, grant.TotalW);
        Assert.Equal(Curb.Floor, grant.Curb);
        Assert.True(grant.FloorNear);
        Assert.False(grant.Recovered);
    }

    [Fact]
    public void Decide_HeapThatCoolsByItselfWellAboveItsFloor_HasNotRecovered()
    {
        Grant grant = Decide(Heap(55, -3000), house: 0, outside: -10);

        Assert.True(grant.FloorNear);
        Assert.False(grant.Recovered);
    }

    [Fact]
    public void Decide_EstimateNotTrusted_GivesAgainstFrostOnly()
    {
        Grant cool = Decide(Heap(62, 1000) with { Trusted = false }, house: 9, outside: 6);
        Grant frost = Decide(Heap(62, 1000) with { Trusted = false }, house: 5, outside: 0);

        Assert.Equal((0, Curb.Probes), (cool.TotalW, cool.Curb));
        Assert.True(frost.TotalW > 0);
    }

    [Fact]
    public void Decide_WaterReachesTooLittle_AirTakesTheRestNearTheMinimum()
    {
        Grant near = MeansPolicy.Decide(Settings, Heap(60, 1000), 60, new Reach(800, 500), 4, -10, 3);
        Grant far = MeansPolicy.Decide(Settings, Heap(60, 2000), 60, new Reach(800, 500), 9, 8, 3);

        Assert.Equal(800, near.WaterW);
        Assert.Equal(500, near.AirW);
        Assert.Equal(0, far.AirW);
    }

    [Fact]
    public void Decide_LittleLeftOver_IsNotWorthTheBlower()
    {
        double means = Decide(Heap(50, 0), house: 4, outside: -10).TotalW;

        Assert.Equal(0, MeansPolicy.Decide(Settings, Heap(50, 0), 50, new Reach(means - 149, 500), 4, -10, 3).AirW);
        Assert.Equal(151, MeansPolicy.Decide(Settings, Heap(50, 0), 50, new Reach(means - 151, 500), 4, -10, 3).AirW, 1e-9);
    }

    [Fact]
    public void Decide_HeapTooHot_BanksHeatInAHouseAtItsSetPoint() =>
        Assert.True(Decide(Heap(64, 1000), house: 12.5, outside: 10).WantW > Decide(Heap(61, 1000), house: 12.5, outside: 10).WantW);

    private static Grant Decide(HeapEstimate heap, double house, double outside) =>
        MeansPolicy.Decide(Settings, heap, heap.ActiveZoneCelsius, Wide, house, outside, 3);

    private static HeapEstimate Heap(double zone, double net) => new(zone, zone, zone, 0, net, 0, 0, true, true);
}
