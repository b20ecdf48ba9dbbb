using PileController.Control.Regulation;

namespace PileController.Rigs.Hardware.Loads;

/// <summary>
/// Where the real valve is believed to stand, and where it is to be driven from there. Pure: it is told how long the motor ran
/// and what the end switches say. At the start its place is unknown, and it is driven against a stop first.
/// </summary>
/// <param name="motion">How it moves.</param>
internal sealed class ValvePlace(ValveMotion motion)
{
    // Less than this is not worth a stroke: motors have backlash, relays wear (common practice, no source).
    private const double LeastWay = 0.005;
    private const double LeastPulseSeconds = 0.2;
    private const double Arrived = 0.0005;
    private const double LeastWayToAnEnd = 0.001;

    private double? _finding;
    private double _away;

    /// <summary>Where it is believed to stand, 0 to 1, a little beyond while it is driven against a stop.</summary>
    public double Believed { get; private set; }

    /// <summary>Whether its place has been found since the start.</summary>
    public bool IsKnown { get; private set; }

    /// <summary>Time since it was last surely at a stop, s.</summary>
    public double SinceHomedSeconds { get; private set; }

    /// <summary>True while its end switches cannot be believed; then its place is reckoned from time alone.</summary>
    public bool IsBlind { get; private set; }

    private ValveFeedback Feedback => IsBlind ? ValveFeedback.None : motion.Feedback;

    /// <summary>Lets time pass.</summary>
    /// <param name="direction">The way the motor ran: 1 open, −1 shut, 0 not.</param>
    /// <param name="seconds">How long, s.</param>
    public void Pass(int direction, double seconds)
    {
        SinceHomedSeconds += seconds;
        double way = direction * seconds / motion.TravelSeconds;
        _away += Math.Abs(way);
        Believed = Math.Clamp(Believed + way, -ValveTravel.OverTravel, 1 + ValveTravel.OverTravel);
    }

    /// <summary>Takes in what the end switches say.</summary>
    /// <param name="end">What they say.</param>
    /// <param name="direction">The way the motor runs.</param>
    /// <returns>What a person should look at, or null.</returns>
    public string? See(ValveEnd end, int direction)
    {
        if (end == ValveEnd.Both)
        {
            return Doubt("Both end switches of the valve report at once: its place is reckoned from time until they are mended.");
        }

        int side = end switch { ValveEnd.Open => 1, ValveEnd.Shut => -1, _ => 0 };
        if (side == 0 || direction != -side)
        {
            _away = 0;
        }

        if (side != 0 && direction == -side)
        {
            // It is just leaving, and the switch has some play; but not as much as this.
            return _away > ValveTravel.OverTravel
                ? Doubt($"The valve does not leave its {(side > 0 ? "open" : "shut")} end: motor, gear or end switch is stuck.")
                : null;
        }

        if (side != 0 && (!IsBlind || direction == side))
        {
            IsBlind = false;
            Home(side > 0 ? 1 : 0);
        }

        return null;
    }

    /// <summary>Which way the motor is to run now, towards a place.</summary>
    /// <param name="target">Where it is wanted, 0 to 1; null to stop where it is.</param>
    /// <param name="direction">The way it runs now.</param>
    /// <param name="end">What the end switches say.</param>
    /// <param name="silent">What a person should look at: an end switch that should have reported and did not.</param>
    /// <returns>The way to run, and how long that will take, s.</returns>
    public (int Direction, double Seconds) Towards(double? target, int direction, ValveEnd end, out string? silent)
    {
        silent = null;
        if (target is not { } wanted)
        {
            _finding = null;
            return (0, 0);
        }

        // At most to the stop and back to where it is wanted.
        for (int leg = 0; leg < 3; leg++)
        {
            double aim = Aim(wanted, end);
            double way = aim - Believed;
            if (aim is < 0 or > 1 && way * direction < -Arrived)
            {
                // It runs the other way: it stops first.
                return (0, 0);
            }

            if (direction != 0 ? way * direction > Arrived : Math.Abs(way) > Worth(aim))
            {
                return (Math.Sign(way), Math.Abs(way) * motion.TravelSeconds);
            }

            if (aim is >= 0 and <= 1)
            {
                // Past an arrival by a moment it may still have to go the other way, which is a stroke of its own.
                Believed = Math.Clamp(Believed, 0, 1);
                return (0, 0);
            }

            if (Feedback == ValveFeedback.EndSwitches)
            {
                silent = Doubt(
                    $"The valve's {(aim > 1 ? "open" : "shut")} end switch did not report after the valve was driven against that stop: its place is reckoned from time until it does.");
            }

            Home(aim > 1 ? 1 : 0);
            direction = 0;
        }

        return (0, 0);
    }

    /// <summary>Its place is no longer known: the motor did something else than it was told.</summary>
    public void Lose()
    {
        IsKnown = false;
        _finding = null;
    }

    private double Aim(double wanted, ValveEnd end)
    {
        if (!IsKnown && _finding is null)
        {
            // It may stand at the far end.
            _finding = wanted < 0.5 ? -ValveTravel.OverTravel : 1 + ValveTravel.OverTravel;
            Believed = wanted < 0.5 ? 1 : 0;
        }

        bool arrived = wanted >= 1 ? end == ValveEnd.Open : wanted <= 0 && end == ValveEnd.Shut;
        return _finding ?? ValveTravel.Aim(wanted, Believed, SinceHomedSeconds, Feedback, arrived);
    }

    private double Worth(double aim) =>
        aim is > 0 and < 1 ? Math.Max(LeastWay, LeastPulseSeconds / motion.TravelSeconds) : LeastWayToAnEnd;

    private void Home(double place)
    {
        Believed = place;
        IsKnown = true;
        _finding = null;
        SinceHomedSeconds = 0;
    }

    private string? Doubt(string sentence)
    {
        bool news = !IsBlind;
        IsBlind = true;
        return news ? sentence : null;
    }
}
