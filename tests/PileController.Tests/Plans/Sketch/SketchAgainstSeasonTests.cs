using PileController.Control.Decisions;
using PileController.Physics.Plants;
using PileController.Plans.Sketch;
using PileController.Seasons;
using PileController.Settings;
using PileController.Simulation;
using Xunit.Abstractions;

namespace PileController.Tests.Plans.Sketch;

/// <summary>The sketch against a whole season of the demo with the real controller, tick by tick.</summary>
public class SketchAgainstSeasonTests(ITestOutputHelper output)
{
    // The sketch draws all that the heap bears, the controller what the house wants: the harder drawn heap runs cooler
    // and burns more slowly, so that the two fade at different days.
    private const double FadeWithinDays = 14;

    [Fact]
    public void Sketch_OfTheDemo_LightsWithTheSeasonFadesNearItAndBearsMoreThanTheHouseTook()
    {
        PileSettings settings = PileSettings.AlderBank;
        SeasonPlan plan = SeasonPlanning.Of(settings, settings.Control, Sketched.Weather, PileController.Simulation.Demo.Built, Sketched.Days);
        Holding holding = new(plan.Build, plan.Control, plan.Rig, plan.Weather, plan.OffsetMinutes, plan.StartUtcMilliseconds);
        SeasonScore score = new(plan.Control);
        FadeWatch fade = new();
        long ticksADay = (long)(86_400 / plan.Control.TickSeconds);
        double before = 0;
        for (int day = 1; day <= Sketched.Days; day++)
        {
            for (long tick = 0; tick < ticksADay; tick++)
            {
                Decision decision = holding.Tick(holding.Read(), []);
                score.Add(holding.Plant, decision, plan.Control.TickSeconds);
            }

            double made = holding.Plant.Heap.Ledger.GeneratedJ;
            fade.Add(day, (made - before) / 86_400, score.LitOnDay);
            before = made;
        }

        SketchHeap heap = Sketched.Demo.Heap;
        double drawnWatts = holding.Plant.Heap.Ledger.DrawnJ / (Sketched.Days * 86_400.0);
        output.WriteLine($"lit {heap.LitOnDay:F2} against {score.LitOnDay:F2}, fades {heap.FadesOnDay} against {fade.FadesOnDay}, "
            + $"bears {Sketched.Demo.Coil.MeanDrawnWatts:F0} W, drawn {drawnWatts:F0} W");

        Assert.Equal(score.LitOnDay!.Value, heap.LitOnDay!.Value, 0.25);
        Assert.Equal(fade.FadesOnDay!.Value, heap.FadesOnDay!.Value, FadeWithinDays);
        Assert.True(Sketched.Demo.Coil.MeanDrawnWatts > drawnWatts, $"drawn {drawnWatts:F0} W");
    }
}
