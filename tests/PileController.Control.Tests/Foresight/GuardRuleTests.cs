using PileController.Control.Foresight;

namespace PileController.Control.Tests.Foresight;

public sealed class GuardRuleTests
{
    private static readonly ControlSettings Settings = new();
    private static readonly HouseModel House = HouseModel.Of(Settings, HouseMemory.Fresh);

    [Fact]
    public void Joules_MildNight_IsNothing() => Assert.Equal(0, Need(House, 2));

    [Fact]
    public void Joules_LongFrost_ComesToWhatTheHouseLosesLessWhatTheGroundGives()
    {
        // Held at 1.5 °C for so long that nothing is stored any more: loss to -9 °C under the curtain, gain through the floor in
        // series with the ground. An hour's want takes no account of the curtain and so holds the air a quarter of a kelvin high.
        double loss = (House.LossWPerK - House.CurtainWPerK) * 10.5;
        double ground = 7.5 / ((1 / House.FloorWPerK) + (1 / House.GroundWPerK));
        double first = Need(House, -9, 2000);
        double last = Need(House, -9, 2024);

        Assert.Equal((loss - ground) * 86_400, last - first, 0.03 * loss * 86_400);
    }

    [Fact]
    public void Joules_LeakierHouse_IsMore() => Assert.True(Need(House with { LossWPerK = 1.5 * House.LossWPerK }, -6) > 1.4 * Need(House, -6));

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

    private static double Need(in HouseModel house, double outsideC, int hours = 24)
    {
        double[] outside = new double[hours];
        Array.Fill(outside, outsideC);
        return GuardRule.Joules(house, new HouseState(6, 8, 6), outside, new double[hours]);
    }
}
