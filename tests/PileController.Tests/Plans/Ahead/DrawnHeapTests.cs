using PileController.Control.Decisions;
using PileController.Plans.Ahead;
using PileController.Seasons;
using PileController.Simulation;
using Xunit.Abstractions;

namespace PileController.Tests.Plans.Ahead;

/// <summary>The controller on heaps that are not those its settings tell: what is not told is drawn from its spreads.</summary>
public class DrawnHeapTests(ITestOutputHelper output)
{
    private const int Seasons = 12;
    private const int Days = 100;

    // The first days are those in which a heap is got to know.
    private const int FirstDay = 12;

    [Fact]
    public async Task Estimate_OfHeapsDrawnFromTheirSpreads_IsTrustedAndLiesInItsBand()
    {
        AheadRequest request = AheadBench.Request(Seasons, Days, files: [AheadBench.NewYork, AheadBench.Seattle]);
        Sight[] sights = new Sight[Seasons];
        await Parallel.ForAsync(0, Seasons, (season, _) =>
        {
            sights[season] = Live(request, season);
            return ValueTask.CompletedTask;
        });

        output.WriteLine(string.Join(", ", sights.Select(sight => $"{sight.Held:P0}")));

        // Every probe of theirs is sound.
        Assert.All(sights, sight => Assert.InRange(sight.Distrusted, 0, 0.001));
        Assert.InRange(sights.Average(sight => sight.Held), 0.96, 1);

        // A heap with thrice the permeability told and a cover that lets out twice as much is seen somewhat too warm.
        Assert.All(sights, sight => Assert.InRange(sight.Held, 0.7, 1));
    }

    private static Sight Live(AheadRequest request, int season)
    {
        SeasonDraw draw = SeasonDraw.Of(request.Settings.Plan.Spreads, request.Seed, season);
        SeasonPlan plan = DrawnSeason.Plan(request.Settings, request.Winters[season % request.Winters.Count], draw, Days, PlanSteps.Planning);
        Holding holding = new(plan.Build, plan.Control, plan.Rig, plan.Weather, plan.OffsetMinutes, plan.StartUtcMilliseconds, plan.QuickSeconds);
        int ticks = (int)(86_400 / plan.Control.TickSeconds);
        int counted = 0;
        int distrusted = 0;
        int held = 0;
        for (int i = 0; i < Days * ticks; i++)
        {
            Decision decision = holding.Tick(holding.Read(), []);
            if (i >= FirstDay * ticks)
            {
                HeapEstimate estimate = decision.Estimate;
                counted++;
                distrusted += estimate.Trusted ? 0 : 1;
                held += Math.Abs(estimate.ActiveZoneCelsius - holding.Plant.Heap.ActiveZoneC) <= 1.96 * estimate.UncertaintyKelvin ? 1 : 0;
            }
        }

        return new Sight((double)distrusted / counted, (double)held / counted);
    }

    /// <summary>Shares of a season in which the estimate was not trusted, and in which the truth lay within its band of 95 %.</summary>
    private readonly record struct Sight(double Distrusted, double Held);
}
