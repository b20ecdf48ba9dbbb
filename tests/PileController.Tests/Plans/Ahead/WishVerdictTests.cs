using PileController.Physics.Heaps;
using PileController.Plans.Ahead;

namespace PileController.Tests.Plans.Ahead;

public class WishVerdictTests
{
    private const int Days = 180;

    [Fact]
    public void Wish_OfAGallonAMinuteFrom50To140F_IsThirteenKilowattsAndBeyondATenTonHeap()
    {
        PlanWish wish = new() { FlowLitresPerMinute = 3.785411784, FromC = 10, ToC = 60 };

        // TRD-012: 44 982 BTU/h, 13.18 kW (8.33 × 60 × 90, exact by trade figures).
        WishVerdict verdict = WishVerdict.Of(wish, Ahead(generatedKWh: 6000, drawnKWh: 2600, degradableKg: 2000))!;
        Assert.Equal(13_180, verdict.WishWatts, 0.005 * 13_180);
        Assert.True(verdict.BeyondMass);
        Assert.StartsWith("3.79 L/min heated from 10.0 °C to 60.0 °C all winter is 13.", verdict.Metric, StringComparison.Ordinal);
        Assert.StartsWith("1.00 gal/min heated from 50.0 °F to 140.0 °F all winter is 4", verdict.Us, StringComparison.Ordinal);
        Assert.Contains("BTU/h", verdict.Us, StringComparison.Ordinal);
        Assert.Contains("your heap makes 1.39–1.39 kW and gives 0.6–0.6 kW of that", verdict.Metric, StringComparison.Ordinal);
        Assert.Contains("beyond what its mass holds", verdict.Metric, StringComparison.Ordinal);
    }

    [Fact]
    public void Wish_ThatTheMassWouldAllowButTheCoilDoesNot_IsToldSo()
    {
        PlanWish wish = new() { FlowLitresPerMinute = 0.4, FromC = 10, ToC = 60 };
        WishVerdict verdict = WishVerdict.Of(wish, Ahead(generatedKWh: 6000, drawnKWh: 2600, degradableKg: 2000))!;
        Assert.False(verdict.BeyondMass);
        Assert.Contains("comes out by this coil", verdict.Metric, StringComparison.Ordinal);
    }

    [Fact]
    public void Wish_WithinTheDraw_IsToldSo()
    {
        PlanWish wish = new() { FlowLitresPerMinute = 0.1, FromC = 10, ToC = 60 };
        WishVerdict verdict = WishVerdict.Of(wish, Ahead(generatedKWh: 6000, drawnKWh: 2600, degradableKg: 2000))!;
        Assert.EndsWith("The wish is within it.", verdict.Metric, StringComparison.Ordinal);
    }

    [Fact]
    public void Wish_OfNoFlow_IsNone() => Assert.Null(WishVerdict.Of(new PlanWish(), Ahead(1, 1, 1)));

    private static AheadResult Ahead(double generatedKWh, double drawnKWh, double degradableKg)
    {
        SeasonOutcome season = new(0, drawnKWh, 0, generatedKWh, degradableKg, 0, 0, 0, 9, null, 0, 0, 0, 0, 0);
        Assert.Equal(degradableKg * Stuff.HeatPerSolids / 3.6e6, season.MostHeatKWh);
        return AheadResult.Of([season], Days);
    }
}
