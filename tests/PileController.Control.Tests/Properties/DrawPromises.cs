using PileController.Control.Modes;

namespace PileController.Control.Tests.Properties;

/// <summary>Never more is drawn than the heap bears and the house wants.</summary>
internal static class DrawPromises
{
    private const double Grain = 1e-9;

    public static IReadOnlyList<Promise> All { get; } =
    [
        Promise.OfEach("nothing is drawn at the floor but against frost in the lines or by hand", KeepsTheFloor),
        Promise.OfEach("the grant is within want and means", GrantsWithinMeans),
        Promise.OfEach("a heap that has not lit is not drawn on", LeavesTheUnlit),
    ];

    private static void KeepsTheFloor(Tick tick)
    {
        double least = Math.Min(tick.After.Estimator.LeastZoneC, tick.After.Estimator.ActiveZoneC);
        if (tick.Settings.Policy != DrawPolicy.Means || least > tick.Settings.HeapFloorC)
        {
            return;
        }

        Assert.Equal(0, tick.Decision.GrantWatts);
        if (tick.Decision.Mode != Mode.ByHand)
        {
            Assert.True(tick.Told.PumpDuty == 0 || tick.Acts("lineFrost"), $"the pump runs in {tick.Decision.Mode}");
            Assert.Equal(0, tick.Told.BlowerDuty);
        }
    }

    private static void GrantsWithinMeans(Tick tick)
    {
        Assert.True(tick.Decision.GrantWatts <= tick.Decision.WantWatts + Grain);
        Assert.True(tick.Settings.Policy != DrawPolicy.Means || tick.Decision.GrantWatts <= tick.Decision.MeansWatts + Grain);
        Assert.Equal(tick.Decision.GrantWatts, tick.Decision.WaterGrantWatts + tick.Decision.AirGrantWatts, Grain);
    }

    private static void LeavesTheUnlit(Tick tick)
    {
        if (!tick.Decision.Estimate.Lit && tick.Decision.Mode != Mode.ByHand && !tick.Acts("lineFrost"))
        {
            Assert.Equal(0, tick.Told.PumpDuty);
            Assert.Equal(0, tick.Told.BlowerDuty);
        }
    }
}
