using PileController.Control.Foresight;

namespace PileController.Control.Tests.Foresight;

public sealed class TonightLearnedTests
{
    private const double MinimumC = 5;

    [Fact]
    public void After_NightsThroughWhichTheHouseWasHeld_KnowsTheRigsSwing()
    {
        TonightLearned learned = TonightLearned.Fresh;
        for (int i = 0; i < 100; i++)
        {
            learned = Lived(learned, saidC: MinimumC + 0.5, leastC: MinimumC + (i % 2 == 0 ? 0.2 : 0.3));
        }

        Assert.InRange(learned.HoldK, 0.24, 0.26);
        Assert.Equal(0.0025, learned.HoldK2, 1e-3);
        Assert.Equal(MinimumC + learned.HoldK, learned.LeastC(MinimumC + 0.6, MinimumC));
        Assert.Equal(learned.HoldK2, learned.Own2(MinimumC + 0.6, MinimumC));
        Assert.True(learned.Chance(MinimumC + 0.6, MinimumC) > 0.95);
    }

    [Fact]
    public void After_NightsHeldCloserThanUsual_ExpectsAsMuchLessOfThemAndNoLessOfOthers()
    {
        const double closerK = 0.3;
        TonightLearned learned = TonightLearned.Fresh;
        for (int i = 0; i < 100; i++)
        {
            learned = Lived(learned with { DueCloserK = closerK }, saidC: MinimumC + 0.1, leastC: MinimumC + 0.05);
        }

        Assert.Equal(0.35, learned.HoldK, 1e-3);
        Assert.Equal(MinimumC + 0.05, learned.LeastC(MinimumC + 0.6, MinimumC, closerK), 1e-3);
        Assert.Equal(MinimumC + 0.35, learned.LeastC(MinimumC + 0.6, MinimumC), 1e-3);
        Assert.True(learned.Chance(MinimumC + 0.6, MinimumC, closerK) < learned.Chance(MinimumC + 0.6, MinimumC));
    }

    [Fact]
    public void After_NightsThatOftenDip_SaysSo()
    {
        TonightLearned learned = TonightLearned.Fresh;
        for (int i = 0; i < 100; i++)
        {
            learned = Lived(learned, saidC: MinimumC + 0.5, leastC: MinimumC + (i % 2 == 0 ? -0.08 : 0.08));
        }

        Assert.InRange(learned.Chance(MinimumC + 0.6, MinimumC), 0.3, 0.7);
    }

    [Theory]
    [InlineData(2.0, 1.9)]
    [InlineData(0.5, -0.2)]
    [InlineData(0.5, 1.5)]
    public void After_ANightThatWasNotHeld_TeachesNothingOfTheSwing(double saidAboveK, double cameAboveK)
    {
        TonightLearned learned = Lived(TonightLearned.Fresh, MinimumC + saidAboveK, MinimumC + cameAboveK);

        Assert.Equal((TonightLearned.Fresh.HoldK, TonightLearned.Fresh.HoldK2), (learned.HoldK, learned.HoldK2));
        Assert.Equal(1, learned.Nights);
        Assert.Null(learned.Due);
    }

    [Fact]
    public void LeastC_OfANightNoHeatIsAskedFor_IsTheModels()
    {
        const double warm = MinimumC + Course.UsualHeadKelvin + 0.1;
        Assert.Equal(warm, TonightLearned.Fresh.LeastC(warm, MinimumC));
    }

    [Fact]
    public void LeastC_OfANightTheHeapCannotHold_IsTheModels()
    {
        Assert.Equal(MinimumC - 4, TonightLearned.Fresh.LeastC(MinimumC - 4, MinimumC));
        Assert.Equal(TonightLearned.Fresh.OwnK2, TonightLearned.Fresh.Own2(MinimumC - 4, MinimumC));
        Assert.True(TonightLearned.Fresh.Chance(MinimumC - 4, MinimumC) < 0.01);
    }

    // A night that colder air would not have made colder: what it teaches is the rig's, not the weather's.
    private static TonightLearned Lived(TonightLearned learned, double saidC, double leastC) => (learned with
    {
        Due = new Tonight(saidC, saidC, saidC, 0, 0.9, null, null, 0, 0, ColderK: 0, WarmerK: 0, OutsideSigmaK: 2, UsesForecast: false),
    }).After(leastC, MinimumC);
}
