using PileController.Control.Decisions;
using PileController.Control.Estimation;
using PileController.Control.Means;

namespace PileController.Control.Foresight;

/// <summary>
/// When the horizon looks again, and what is done where it cannot: without a heap that has lit, or with an estimate in
/// doubt, the usual course is followed and nothing is foretold.
/// </summary>
public static class HorizonRule
{
    /// <summary>The course of this tick, and when it was chosen.</summary>
    /// <param name="settings">What the controller is told.</param>
    /// <param name="memory">What the tick before handed on.</param>
    /// <param name="estimate">The heap as believed now.</param>
    /// <param name="estimator">The observer behind it.</param>
    /// <param name="weather">What was learned of the air outside.</param>
    /// <param name="house">What was learned of the house.</param>
    /// <param name="forecast">A forecast, or null.</param>
    /// <param name="guardJ">What the frost guard may come to take, J.</param>
    /// <param name="at">Now.</param>
    public static (Course Course, long LookedAtMonotonicMilliseconds) Step(
        ControlSettings settings, Memory memory, in HeapEstimate estimate, in EstimatorMemory estimator, in WeatherMemory weather,
        in HouseMemory house, Forecast? forecast, double guardJ, in Instant at)
    {
        ArgumentNullException.ThrowIfNull(settings);
        ArgumentNullException.ThrowIfNull(memory);
        if (settings.Policy != DrawPolicy.Means || !estimate.Lit || !estimate.Trusted || estimator.Belief is not { } belief)
        {
            return (Course.Usual, -1);
        }

        long since = memory.LookedAtMonotonicMilliseconds;
        if (since >= 0 && at.MonotonicMilliseconds - since < Horizon.SolveSeconds * 1000)
        {
            return (memory.Course, since);
        }

        int hours = (int)Math.Clamp(settings.LookAheadHours, 1, Horizon.MostHours);
        Span<double> outsideC = stackalloc double[hours];
        Span<double> gainW = stackalloc double[hours];
        Outlook.Fill(settings, weather, house, forecast, at, outsideC, gainW);
        HorizonTask task = new()
        {
            Settings = settings,
            Heap = belief.Learned(HeapFigures.Told(settings, new HeapShape(settings))),
            HeapC = belief.Mean.AsSpan(0, HeapShape.Nodes),
            LeastZoneC = settings.HeapFloorC + MeansRule.MarginKelvin(settings, estimate, guardJ),
            ReserveKelvin = SeasonReserve.Kelvin(settings, at, weather.Learned.WeeksC),
            House = HouseModel.Of(settings, house),
            HouseNow = house.State,
            OutsideC = outsideC,
            GainW = gainW,
            At = at,
        };
        return (Horizon.Solve(task, memory.Course), at.MonotonicMilliseconds);
    }
}
