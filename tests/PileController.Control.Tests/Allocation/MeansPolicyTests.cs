using PileController.Control.Allocation;
using PileController.Control.Decisions;
using PileController.Control.Foresight;
using PileController.Control.Regulation;

namespace PileController.Control.Tests.Allocation;

public sealed class MeansPolicyTests
{
    private static readonly ControlSettings Settings = new() { Confidence = 0.5 };
    private static readonly ControlSettings Ducts = Settings with { DuctWPerK = 20 };
    private static readonly Instant Autumn = new(new DateTimeOffset(2025, 11, 10, 3, 0, 0, TimeSpan.Zero).ToUnixTimeMilliseconds(), 0, 0);
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
        Grant grant = Decide(Heap(46, 0), house: 4, outside: -10);

        Assert.Equal(Curb.Means, grant.Curb);
        Assert.Equal(grant.MeansW, grant.TotalW, 1e-9);
        Assert.True(grant.Urgent);
    }

    [Fact]
    public void Decide_ComfortWithoutReserve_IsKeptForAColderHour()
    {
        Grant grant = Decide(Heap(48, 0), house: 9, outside: 6);

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
    public void Decide_HeapThatCoolsByItselfAboveItsFloor_HasNotRecovered()
    {
        Grant grant = Decide(Heap(47, -3000), house: 0, outside: -10);

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
        Grant near = Decide(Heap(60, 1000), house: 4, outside: -10, new Reach(800, 500));

        Assert.Equal(800, near.WaterW);
        Assert.Equal(500, near.AirW);
    }

    [Fact]
    public void Decide_WaterReachesTooLittleForComfort_AirHelpsGentlyButNeverThroughTheHeap()
    {
        Grant closed = Decide(Heap(60, 2000), house: 9, outside: 0, new Reach(800, 2000), settings: Ducts);
        Grant through = Decide(Heap(60, 2000), house: 9, outside: 0, new Reach(800, 2000), settings: Ducts with { DuctWPerK = 0 });

        Assert.Equal((800, 800), (closed.WaterW, closed.AirW));
        Assert.Equal((800, 0), (through.WaterW, through.AirW));
    }

    [Fact]
    public void Decide_LittleLeftOver_IsNotWorthTheBlower()
    {
        double asked = Decide(Heap(60, 0), house: 4, outside: -10).TotalW;

        Assert.Equal(0, Decide(Heap(60, 0), 4, -10, new Reach(asked - 149, 500)).AirW);
        Assert.Equal(151, Decide(Heap(60, 0), 4, -10, new Reach(asked - 151, 500)).AirW, 1e-9);
    }

    [Fact]
    public void Decide_CourseWithoutComfort_KeepsItForAColderHour()
    {
        Grant grant = Decide(Heap(62, 1000), 9, 6, Wide, Course.Usual with { Comfort = false });

        Assert.Equal((0, Curb.Saving), (grant.TotalW, grant.Curb));
    }

    [Fact]
    public void Decide_CourseThatBanksAgainstFrost_HoldsTheHouseHigher() =>
        Assert.True(Decide(Heap(60, 0), 6.5, -10, Wide, new Course(false, 3)).TotalW > Decide(Heap(60, 0), 6.5, -10, Wide, new Course(false, 0.5)).TotalW);

    [Fact]
    public void Decide_BatteryLow_KeepsItForFrost()
    {
        Grant comfort = Decide(Heap(62, 1000), 9, 6, Wide, power: 0);
        Grant frost = Decide(Heap(62, 1000), 4, -10, Wide, power: 0);

        Assert.Equal((0, Curb.Power), (comfort.TotalW, comfort.Curb));
        Assert.True(frost.TotalW > 1000);
    }

    [Fact]
    public void Decide_BatteryShort_SparesTheAirWhereThePumpKnowsFullPowerOnly()
    {
        Reach reach = new(1500, 2000);
        Grant gentle = Decide(Heap(60, 2000), 9, 0, reach, power: 0.1, settings: Ducts);
        Grant relay = Decide(Heap(60, 2000), 9, 0, reach, power: 0.1, settings: Ducts with { Drive = PumpDrive.OnOff });
        Grant empty = Decide(Heap(60, 2000), 9, 0, reach, power: 0, settings: Ducts with { Drive = PumpDrive.OnOff });

        Assert.Equal(gentle.WaterW, relay.WaterW);
        Assert.Equal((0, 800), (gentle.AirW, relay.AirW));
        Assert.Equal(0, empty.TotalW);
    }

    [Fact]
    public void Decide_HouseHeldClose_IsUrgentOnceItHasLostAFifthOfWhatItIsHeldAbove()
    {
        Course close = new(false, 0.4);

        Assert.True(Decide(Heap(60, 0), 5.3, -10, Wide, close).Urgent);
        Assert.False(Decide(Heap(60, 0), 5.35, -10, Wide, close).Urgent);
        Assert.True(Decide(Heap(60, 0), 5.35, -10).Urgent);
        Assert.False(Decide(Heap(60, 0), 5.6, -10, Wide, new Course(false, 3)).Urgent);
    }

    [Fact]
    public void Decide_HeapAboveTheSeasonsReserve_BanksHeatInAHouseAtItsSetPoint() =>
        Assert.True(Decide(Heap(53, 1000), house: 12.5, outside: 10).WantW > Decide(Heap(49, 1000), house: 12.5, outside: 10).WantW);

    private static Grant Decide(
        HeapEstimate heap, double house, double outside, Reach? reach = null, Course? course = null, double power = 1,
        ControlSettings? settings = null) =>
        MeansPolicy.Decide(settings ?? Settings, heap, heap.ActiveZoneCelsius, reach ?? Wide, house, outside, Autumn, course ?? Course.Usual, power, 0);

    private static HeapEstimate Heap(double zone, double net) => new(zone, zone, zone, 0, net, 0, 0, true, true);
}
