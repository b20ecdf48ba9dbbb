using PileController.Control.Regulation;

namespace PileController.Rigs.Simulated;

/// <summary>
/// A motor valve driven for a time: it travels towards what it is told until it is believed to be there. Motors run a
/// little faster one way than the other, so the belief drifts from the truth (<see cref="ValveTravel"/> sets it right).
/// </summary>
internal sealed class TravellingValve
{
    private readonly double _travelSeconds;
    private readonly ValveFeedback _feedback;
    private readonly double _stray;
    private double _position;

    /// <summary>Makes a shut valve.</summary>
    /// <param name="travelSeconds">From shut to open, s; 0 when there is no valve, and the pipe is always open.</param>
    /// <param name="feedback">What it tells of where it stands.</param>
    /// <param name="stray">Share by which it opens slower and shuts faster than believed, 0 to below 1.</param>
    /// <exception cref="ArgumentException">A negative time, or none.</exception>
    public TravellingValve(double travelSeconds, ValveFeedback feedback = ValveFeedback.EndSwitches, double stray = 0)
    {
        if (!(travelSeconds >= 0) || double.IsInfinity(travelSeconds))
        {
            throw new ArgumentException(
                $"ValveTravelSeconds is {travelSeconds}; allowed is 0 (no valve) or more.", nameof(travelSeconds));
        }

        _travelSeconds = travelSeconds;
        _feedback = feedback;
        _stray = stray;
        Position = travelSeconds == 0 ? 1 : 0;
    }

    /// <summary>Where it stands, 0 (shut) to 1 (open). Put somewhere, it is believed to stand there.</summary>
    public double Position
    {
        get => _position;
        set => _position = Believed = value;
    }

    /// <summary>Where it is believed to stand; below 0 or above 1 while it is driven against a stop.</summary>
    public double Believed { get; set; }

    /// <summary>Time since it was last surely at a stop, s.</summary>
    public double SinceHomedSeconds { get; set; }

    /// <summary>Travels for a while.</summary>
    /// <returns>The mean opening over that while, which is what the water felt.</returns>
    public double Travel(double target, double seconds)
    {
        if (_travelSeconds == 0)
        {
            return Position;
        }

        SinceHomedSeconds += seconds;
        double felt = 0;
        double left = seconds;
        // At most to the stop and back to where it is wanted.
        for (int leg = 0; leg < 3 && left > 0; leg++)
        {
            double to = ValveTravel.Aim(target, Believed, SinceHomedSeconds, _feedback, Position == target);
            double way = to - Believed;
            double lasts = Math.Min(left, Math.Abs(way) * _travelSeconds);
            if (lasts <= 0)
            {
                break;
            }

            felt += Drive(to, way, lasts);
            left -= lasts;
        }

        return (felt + (left * Position)) / seconds;
    }

    private double Drive(double to, double way, double seconds)
    {
        double opens = way > 0 ? 1 - _stray : 1 + _stray;
        double rate = Math.CopySign(opens / _travelSeconds, way);
        double from = Position;
        double end = Math.Clamp(from + (rate * seconds), 0, 1);
        // Rounding is no travel.
        end = Math.Abs(end - to) < 1e-12 ? to : end;
        double moving = Math.Abs(end - from) / Math.Abs(rate);
        _position = end;
        double reached = Math.Abs(way) - (seconds / _travelSeconds);
        Believed = reached <= 1e-12 ? to : Believed + Math.CopySign(seconds / _travelSeconds, way);
        bool stopped = end is 0 or 1 && (_feedback == ValveFeedback.EndSwitches || ValveTravel.IsAtStop(Believed, to));
        if (stopped)
        {
            Believed = end;
            SinceHomedSeconds = 0;
        }

        return (moving * 0.5 * (from + end)) + ((seconds - moving) * end);
    }
}
