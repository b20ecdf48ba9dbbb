using PileController.Control.Foresight;

namespace PileController.Control.Tests.Foresight;

public sealed class GuardRuleTests
{
    private const double LineFrostC = 2.5;
    private static readonly ControlSettings Settings = new();
    private static readonly HouseModel House = HouseModel.Of(Settings, HouseMemory.Fresh);

    [Fact]
    public void Joules_MildNight_IsNothing() => Assert.Equal(0, Need(House, 2));

    [Fact]
    public void Joules_LongFrost_ComesToWhatTheGuardsPipeGivesTheHouseBelowItsLimit()
    {
        // After so long nothing is stored any more: the house stands where its loss to -9 °C under the curtain is what the ground
        // gives through the floor, and a fifth more than what pipe and tank give by each kelvin below 2.5 °C.
        double loss = House.LossWPerK - House.CurtainWPerK;
        double ground = 1 / ((1 / House.FloorWPerK) + (1 / House.GroundWPerK));
        double pipe = 1.2 * (House.PipeWPerK + House.TankWPerK);
        double air = ((pipe * 2.5) + (ground * 9) - (loss * 9)) / (pipe + ground + loss);
        double first = Need(House, -9, 2000);
        double last = Need(House, -9, 2024);

        // What is given in an hour is told by where the house would stand without it, which is somewhat colder.
        Assert.InRange(last - first, pipe * (2.5 - air) * 86_400, 1.5 * pipe * (2.5 - air) * 86_400);
    }

    [Fact]
    public void Joules_TankStillWarm_IsNothingUntilItHasGoneCold()
    {
        Assert.Equal(0, Need(House, -9, 12, tankC: 20));
        Assert.True(Need(House, -9, 12, tankC: 4) > 5e6);
        Assert.True(Need(House, -9, 48, tankC: 20) > 5e6);
    }

    [Fact]
    public void Joules_MilderHoursAfterTheCold_CountForNothingOnceTheHouseHasWarmed()
    {
        double[] outside = [.. Enumerable.Repeat(-9.0, 24), .. Enumerable.Repeat(8.0, 24)];
        HouseState now = new(6, 8, 4);

        // The cold house takes an hour to warm.
        double cold = Need(House, -9, 24, tankC: 4);
        double last = cold - Need(House, -9, 23, tankC: 4);
        Assert.InRange(GuardRule.Joules(House, now, outside, new double[48], LineFrostC), cold, cold + last);
    }

    [Fact]
    public void Joules_LeakierHouse_IsMore() => Assert.True(Need(House with { LossWPerK = 1.5 * House.LossWPerK }, -6, 48) > 1.4 * Need(House, -6, 48));

    [Fact]
    public void Step_BeforeTheQuarterIsOver_KeepsWhatWasFound()
    {
        GuardNeed found = new(5e6, 1_000_000);

        Assert.Equal(found, Step(found, 1_000_000 + 899_999));
        Assert.Equal(1_900_000, Step(found, 1_900_000).LookedAtMonotonicMilliseconds);
    }

    [Fact]
    public void Step_OtherRule_LooksNotAhead() =>
        Assert.Equal(GuardNeed.Fresh, GuardRule.Step(
            Settings with { Policy = DrawPolicy.Timer }, GuardNeed.Fresh, WeatherMemory.Fresh, HouseMemory.Fresh, null, At(0)));

    private static GuardNeed Step(in GuardNeed before, long atMilliseconds) =>
        GuardRule.Step(Settings, before, WeatherMemory.Fresh, HouseMemory.Fresh, null, At(atMilliseconds));

    private static Instant At(long milliseconds) => new(1_700_000_000_000 + milliseconds, milliseconds, 0);

    private static double Need(in HouseModel house, double outsideC, int hours = 24, double tankC = 6)
    {
        double[] outside = new double[hours];
        Array.Fill(outside, outsideC);
        return GuardRule.Joules(house, new HouseState(6, 8, tankC), outside, new double[hours], LineFrostC);
    }
}
