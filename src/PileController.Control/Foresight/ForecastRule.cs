using PileController.Control.Decisions;

namespace PileController.Control.Foresight;

/// <summary>Takes in forecasts that were handed over.</summary>
internal static class ForecastRule
{
    /// <summary>The forecast from this tick on, and a note when one was refused.</summary>
    /// <param name="before">The forecast so far.</param>
    /// <param name="commands">What was asked for, in order.</param>
    /// <param name="at">Now.</param>
    public static (Forecast? Forecast, string? Note) Of(Forecast? before, IReadOnlyList<Command> commands, in Instant at)
    {
        string? note = null;
        for (int i = 0; i < commands.Count; i++)
        {
            if (commands[i] is TakeForecast take)
            {
                string? fault = take.Forecast.Fault(at.UtcMilliseconds);
                before = fault is null ? take.Forecast : before;
                note = fault is null ? note : $"A forecast was refused: {fault}";
            }
        }

        return (before, note);
    }
}
