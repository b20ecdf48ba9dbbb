using PileController.Control;

namespace PileController.Benchmarks.Bounds;

/// <summary>
/// Turns an hour's level into the duty of one device, tick by tick, under the limits every draw rule has: least duty,
/// slew, least run and least rest.
/// </summary>
internal sealed class DutyTrack(double leastDuty, double leastRunSeconds, ControlSettings settings)
{
    private double _duty;
    private double _sinceSeconds = double.PositiveInfinity;
    private double _intoHour = double.PositiveInfinity;
    private double _onSeconds;
    private double _owedSeconds;

    /// <summary>The duty of the next tick.</summary>
    /// <param name="level">Level of this hour, 0 to 1.</param>
    /// <param name="intoHour">Seconds gone of the hour.</param>
    /// <param name="late">Whether a part hour is to end the hour rather than begin it.</param>
    /// <param name="seconds">Length of the tick, s.</param>
    public double Next(double level, double intoHour, bool late, double seconds)
    {
        double wish = Wish(level, intoHour, late);
        bool running = _duty > 0;
        double held = running ? leastRunSeconds : settings.LeastRestSeconds;
        double before = _duty;
        if (wish > 0 != running && _sinceSeconds < held)
        {
            wish = running ? leastDuty : 0;
        }

        double slew = settings.DutySlewPerSecond * seconds;
        _duty = wish <= 0 ? 0
            : before <= 0 ? Math.Min(wish, leastDuty + slew)
            : Math.Max(leastDuty, Math.Clamp(wish, before - slew, before + slew));
        _sinceSeconds = _duty > 0 == running ? _sinceSeconds + seconds : seconds;
        return _duty;
    }

    /// <summary>An interlock or a lost draw stops the device at once.</summary>
    public void Stop()
    {
        _sinceSeconds = _duty > 0 ? 0 : _sinceSeconds;
        _duty = 0;
        _intoHour = double.PositiveInfinity;
    }

    private double Wish(double level, double intoHour, bool late)
    {
        if (intoHour < _intoHour)
        {
            Begin(level);
        }

        _intoHour = intoHour;
        if (level >= leastDuty)
        {
            return Math.Min(1, level);
        }

        bool within = late ? intoHour >= 3600 - _onSeconds : intoHour < _onSeconds;
        return within ? leastDuty : 0;
    }

    // A run too short for the device is owed to the next hours, so that a little more of a plan always draws a little more.
    private void Begin(double level)
    {
        double on = level >= leastDuty ? 0 : Math.Min(3600, (3600 * level / leastDuty) + _owedSeconds);
        bool runs = on >= leastRunSeconds;
        _onSeconds = runs ? on : 0;
        _owedSeconds = runs ? 0 : on;
    }
}
