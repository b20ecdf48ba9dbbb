using PileController.Control;
using PileController.Control.Decisions;
using PileController.Control.Modes;

namespace PileController.Records.Checking;

/// <summary>Adds up one course tick by tick.</summary>
internal sealed class CourseTally
{
    // As long as a tick counts in the controller's own totals.
    private const double MostTickSeconds = 120;
    private readonly SortedDictionary<Mode, long> _modes = [];
    private readonly SortedDictionary<Curb, long> _curbs = [];
    private double _grantJoules;
    private double _waterJoules;
    private double _airJoules;

    /// <summary>Adds one tick; it lasts as long as the one before it lies back.</summary>
    /// <param name="before">What it was given.</param>
    /// <param name="decision">What was decided.</param>
    public void Add(Memory before, Decision decision)
    {
        double seconds = before.LastMonotonicMilliseconds < 0
            ? 0
            : Math.Clamp((decision.At.MonotonicMilliseconds - before.LastMonotonicMilliseconds) * 0.001, 0, MostTickSeconds);
        _grantJoules += decision.GrantWatts * seconds;
        _waterJoules += decision.Totals.WaterJoules - before.Totals.WaterJoules;
        _airJoules += decision.Totals.AirJoules - before.Totals.AirJoules;
        _modes[decision.Mode] = _modes.GetValueOrDefault(decision.Mode) + 1;
        _curbs[decision.Curb] = _curbs.GetValueOrDefault(decision.Curb) + 1;
    }

    /// <summary>What it has come to.</summary>
    public CourseSum Sum() => new(_grantJoules, _waterJoules, _airJoules, _modes, _curbs);
}
