using PileController.Control.Foresight;

namespace PileController.Control.Tests.Foresight;

public sealed class TonightLearnedTests
{
    private const double MinimumC = 5;

    // What the house's probe itself may differ by.
    private const double ProbeK2 = 0.0225;

    // A night the house would not have stood by itself.
    private static readonly NightLeast Drawn = new(MinimumC + 0.6, MinimumC - 4);

    [Fact]
    public void After_NightsThroughWhichTheHouseWasHeld_KnowsTheRigsSwing()
    {
        TonightLearned learned = TonightLearned.Fresh;
        for (int i = 0; i < 100; i++)
        {
            learned = Lived(learned, saidC: MinimumC, leastC: MinimumC + (i % 2 == 0 ? 0.2 : 0.3));
        }

        Assert.InRange(learned.HoldK, 0.24, 0.26);
        Assert.Equal(0.0025, learned.HoldK2, 1e-3);
        Assert.Equal(MinimumC + learned.HoldK, learned.LeastC(Drawn, MinimumC));
        Assert.Equal(learned.HoldK2 + ProbeK2, learned.Own2(Drawn, MinimumC));
        Assert.InRange(learned.Chance(Drawn, MinimumC), 0.9, 0.97);
    }

    [Fact]
    public void After_NightsHeldCloserThanUsual_ExpectsAsMuchLessOfThemAndNoLessOfOthers()
    {
        const double closerK = 0.3;
        TonightLearned learned = TonightLearned.Fresh;
        for (int i = 0; i < 100; i++)
        {
            learned = Lived(learned with { DueCloserK = closerK }, saidC: MinimumC, leastC: MinimumC + 0.05);
        }

        Assert.Equal(0.35, learned.HoldK, 1e-3);
        Assert.Equal(MinimumC + 0.05, learned.LeastC(Drawn, MinimumC, closerK), 1e-3);
        Assert.Equal(MinimumC + 0.35, learned.LeastC(Drawn, MinimumC), 1e-3);
        Assert.True(learned.Chance(Drawn, MinimumC, closerK) < learned.Chance(Drawn, MinimumC));
    }

    [Fact]
    public void After_NightsThatOftenDip_SaysSo()
    {
        TonightLearned learned = TonightLearned.Fresh;
        for (int i = 0; i < 100; i++)
        {
            learned = Lived(learned, saidC: MinimumC, leastC: MinimumC + (i % 2 == 0 ? -0.08 : 0.08));
        }

        Assert.InRange(learned.Chance(Drawn, MinimumC), 0.3, 0.7);
    }

    [Theory]
    [InlineData(2.0, 1.9)]
    [InlineData(0.5, 0.3)]
    [InlineData(0.3, -0.2)]
    [InlineData(0.3, 1.5)]
    public void After_ANightThatWasNotHeld_TeachesNothingOfTheSwing(double saidAboveK, double cameAboveK)
    {
        TonightLearned learned = Lived(TonightLearned.Fresh, MinimumC + saidAboveK, MinimumC + cameAboveK);

        Assert.Equal((TonightLearned.Fresh.HoldK, TonightLearned.Fresh.HoldK2), (learned.HoldK, learned.HoldK2));
        Assert.Equal(1, learned.Nights);
        Assert.Null(learned.Due);
    }

    [Theory]
    [InlineData(1.1)]
    [InlineData(0.7)]
    public void LeastC_OfANightTheHouseStandsByItself_IsTheModels(double aboveK)
    {
        NightLeast idle = new(MinimumC + 1, MinimumC + aboveK);
        Assert.Equal(MinimumC + Math.Min(1, aboveK), TonightLearned.Fresh.LeastC(idle, MinimumC));
        Assert.Equal(TonightLearned.Fresh.OwnK2, TonightLearned.Fresh.Own2(idle, MinimumC));
        Assert.True(TonightLearned.Fresh.Chance(idle, MinimumC) > TonightLearned.Fresh.Chance(Drawn, MinimumC));
    }

    [Fact]
    public void LeastC_OfANightTheHeapCannotHold_IsTheModels()
    {
        NightLeast lost = new(MinimumC - 4, MinimumC - 9);
        Assert.Equal(MinimumC - 4, TonightLearned.Fresh.LeastC(lost, MinimumC));
        Assert.Equal(TonightLearned.Fresh.OwnK2, TonightLearned.Fresh.Own2(lost, MinimumC));
        Assert.True(TonightLearned.Fresh.Chance(lost, MinimumC) < 0.01);
    }

    // A night that colder air would not have made colder: what it teaches is the rig's, not the weather's.
    private static TonightLearned Lived(TonightLearned learned, double saidC, double leastC) => (learned with
    {
        Due = new Tonight(saidC, saidC, saidC, 0, 0.9, null, null, 0, 0, ColderK: 0, WarmerK: 0, OutsideSigmaK: 2, UsesForecast: false),
    }).After(leastC, MinimumC);
}
