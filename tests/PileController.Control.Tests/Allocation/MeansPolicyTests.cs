using PileController.Control.Allocation;
using PileController.Control.Decisions;
using PileController.Control.Foresight;
using PileController.Control.Regulation;

namespace PileController.Control.Tests.Allocation;

public sealed class MeansPolicyTests
{
    private static readonly ControlSettings Settings = new() { Confidence = 0.5 };
    private static readonly Instant Autumn = new(new DateTimeOffset(2025, 11, 10, 3, 0, 0, TimeSpan.Zero).ToUnixTimeMilliseconds(), 0, 0);
    private static readonly Reach Wide = new(20_000, 2000, 20_000, 800);

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
    public void Decide_EstimateNotTrusted_GivesForComfortOnlyWhereTheHeapSeemsFarAboveItsFloor()
    {
        HeapEstimate doubted = Heap(56, 0) with { Trusted = false };
        Grant cool = Decide(doubted, house: 9, outside: 6);
        Grant unsure = Decide(Heap(62, 0) with { Trusted = false, UncertaintyKelvin = 4 }, 9, 6, settings: Settings with { Confidence = 0.95 });
        Grant hot = Decide(Heap(62, 0) with { Trusted = false }, house: 9, outside: 6);
        Grant frost = Decide(doubted, house: 5, outside: 0);

        Assert.Equal((0, Curb.Probes), (cool.TotalW, cool.Curb));
        Assert.Equal((0, Curb.Probes), (unsure.TotalW, unsure.Curb));
        Assert.True(Decide(Heap(56, 0), house: 9, outside: 6).TotalW > 0);
        Assert.True(hot.TotalW > 0);
        Assert.True(frost.TotalW > 0);
    }

    [Fact]
    public void Decide_WaterReachesTooLittle_AirTakesTheRestNearTheMinimum()
    {
        Grant near = Decide(Heap(60, 1000), house: 4, outside: -10, new Reach(800, 500, 800, 200));

        Assert.Equal(800, near.WaterW);
        Assert.Equal(500, near.AirW);
    }

    [Fact]
    public void Decide_Comfort_GoesGentlyAndFrostAsHardAsItCan()
    {
        Reach reach = new(800, 2000, 600, 700);
        Grant comfort = Decide(Heap(60, 2000), house: 9, outside: 0, reach);
        Grant frost = Decide(Heap(60, 2000), house: 4, outside: -10, reach);

        Assert.Equal((600, 700, Curb.Reach), (comfort.WaterW, comfort.AirW, comfort.Curb));
        Assert.Equal((800, 2000), (frost.WaterW, frost.AirW));
    }

    [Fact]
    public void Decide_LittleLeftOver_IsNotWorthTheBlower()
    {
        double asked = Decide(Heap(60, 0), house: 4, outside: -10).TotalW;

        Assert.Equal(0, Decide(Heap(60, 0), 4, -10, new Reach(asked - 149, 500, 0, 0)).AirW);
        Assert.Equal(151, Decide(Heap(60, 0), 4, -10, new Reach(asked - 151, 500, 0, 0)).AirW, 1e-9);
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
        Grant comfort = Decide(Heap(62, 1000), 9, 6, Wide, battery: default(BatteryLeave));
        Grant frost = Decide(Heap(62, 1000), 4, -10, Wide, battery: default(BatteryLeave));

        Assert.Equal((0, Curb.Power), (comfort.TotalW, comfort.Curb));
        Assert.True(frost.TotalW > 1000);
    }

    [Fact]
    public void Decide_BatteryNearlyLow_EasesTheBlowerAgainstFrostAndNotThePump()
    {
        Reach reach = new(800, 2000, 600, 700);
        Grant grant = Decide(Heap(60, 2000), house: 4, outside: -10, reach, battery: new BatteryLeave(0, 0, 0, 0.3));

        Assert.Equal((800, 600), (grant.WaterW, grant.AirW));
    }

    [Fact]
    public void Decide_BatteryShort_SparesTheAirWhereThePumpKnowsFullPowerOnly()
    {
        Reach reach = new(1500, 2000, 1500, 800);
        BatteryLeave low = new(0.1, 1, 0.5, 1);
        Grant gentle = Decide(Heap(60, 2000), 9, 0, reach, battery: low);
        Grant relay = Decide(Heap(60, 2000), 9, 0, reach, battery: low, settings: Settings with { Drive = PumpDrive.OnOff });
        Grant empty = Decide(Heap(60, 2000), 9, 0, reach, battery: default(BatteryLeave), settings: Settings with { Drive = PumpDrive.OnOff });

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
        HeapEstimate heap, double house, double outside, Reach? reach = null, Course? course = null, BatteryLeave? battery = null,
        ControlSettings? settings = null) =>
        MeansPolicy.Decide(settings ?? Settings, heap, heap.ActiveZoneCelsius, reach ?? Wide, house, outside, Autumn, course ?? Course.Usual, battery ?? BatteryLeave.All, 4, 0);

    private static HeapEstimate Heap(double zone, double net) => new(zone, zone, zone, 0, net, 0, 0, true, true);
}
