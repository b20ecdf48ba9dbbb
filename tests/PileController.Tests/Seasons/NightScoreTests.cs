using PileController.Control;
using PileController.Control.Decisions;
using PileController.Seasons;
using PileController.Tests.Support;

namespace PileController.Tests.Seasons;

public class NightScoreTests
{
    private const long Hour = 3_600_000;
    private static readonly Decision Model = new CannedControl().Step(new(), Memory.Fresh, MadeUp.Readings(default), [], default).Decision;

    [Fact]
    public void Result_BeforeANight_IsNone() => Assert.Null(new NightScore(5).Result);

    [Fact]
    public void Add_NightsAsSaid_MakesAGoodScoreAndATable()
    {
        TonightResult result = Lived([(0.9, 6), (0.9, 6), (0.1, 4), (0.1, 4)]);

        Assert.Equal(4, result.Nights);
        Assert.Equal(0.01, result.Brier, 1e-9);
        // Last night again: nothing known, right, wrong, right.
        Assert.Equal((0.25 + 0 + 1 + 0) / 4, result.BrierPersistence, 1e-9);
        // Share held so far, from a half: 0.5, 0.75, 2.5/3, 2.5/4.
        Assert.Equal((0.25 + 0.0625 + (2.5 / 3 * (2.5 / 3)) + (0.625 * 0.625)) / 4, result.BrierClimatology, 1e-9);
        Assert.Equal([new ReliabilityRow(0.1, 0, 2), new ReliabilityRow(0.9, 1, 2)], result.Reliability);
    }

    [Fact]
    public void Add_ANightBelowTheMinimumForAMomentOnly_IsNotHeld() =>
        Assert.Equal(0.81, Lived([(0.9, 4.99)]).Brier, 1e-9);

    [Fact]
    public void Add_ANightSavedByBackupHeat_IsNotHeld() =>
        Assert.Equal(0.81, Lived([(0.9, 6)], new Outputs(0, 0, 0, true)).Brier, 1e-9);

    private static TonightResult Lived((double Chance, double LeastC)[] nights, Outputs outputs = default)
    {
        NightScore score = new(5);
        for (int hour = 0; hour < (nights.Length * 24) + 12; hour++)
        {
            (double chance, double least) = nights[Math.Clamp((hour - 12) / 24, 0, nights.Length - 1)];
            long at = hour * Hour;
            Decision decision = Model with
            {
                At = new Instant(at, at, 0),
                Outputs = outputs,
                Tonight = Model.Tonight! with { ChanceOfHolding = chance, UntilUtcMilliseconds = at + (17 * Hour) },
            };
            score.Add(decision, hour % 24 == 6 ? least : 10, true);
        }

        return score.Result!;
    }
}
