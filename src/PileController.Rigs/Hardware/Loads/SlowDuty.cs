namespace PileController.Rigs.Hardware.Loads;

/// <summary>
/// Makes a duty from a switch that knows only on and off. With a period the load is on for its share of each
/// period, in whole seconds: for a solid-state gate, which does not wear. Without one the load is on from half
/// duty up and off below a quarter: for a relay, which does.
/// </summary>
internal sealed class SlowDuty
{
    /// <summary>Shortest and longest period, s. Longer ones would look like a pump that does not run.</summary>
    public const double LeastPeriodSeconds = 10;

    /// <summary>Longest period, s; that its off-times stay under the time after which no flow is a fault is checked with the settings.</summary>
    public const double MostPeriodSeconds = 40;

    private const double OnFrom = 0.5;
    private const double OffBelow = 0.25;

    private readonly int _periodSeconds;
    private bool _on;

    /// <summary>Makes one that is off.</summary>
    /// <param name="periodSeconds">Whole seconds, 10 to 40; 0 for on or off by threshold.</param>
    /// <exception cref="ArgumentException">Another period.</exception>
    public SlowDuty(double periodSeconds)
    {
        bool allowed = periodSeconds == 0
            || (periodSeconds is >= LeastPeriodSeconds and <= MostPeriodSeconds && periodSeconds == Math.Floor(periodSeconds));
        if (!allowed)
        {
            throw new ArgumentException(
                $"Hardware.DutyPeriodSeconds is {periodSeconds}; allowed is 0 (on or off by threshold) or whole seconds from {LeastPeriodSeconds} to {MostPeriodSeconds}.",
                nameof(periodSeconds));
        }

        _periodSeconds = (int)periodSeconds;
    }

    /// <summary>Whether the load is on now.</summary>
    /// <param name="duty">0 to 1.</param>
    /// <param name="second">Whole seconds since the rig began.</param>
    public bool IsOn(double duty, long second)
    {
        if (_periodSeconds > 0)
        {
            return second % _periodSeconds < Math.Round(duty * _periodSeconds, MidpointRounding.AwayFromZero);
        }

        _on = duty >= OnFrom || (_on && duty >= OffBelow);
        return _on;
    }
}
