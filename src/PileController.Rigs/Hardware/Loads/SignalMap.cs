namespace PileController.Rigs.Hardware.Loads;

/// <summary>
/// Which signal a device takes for which duty. A pump or fan by 0 to 10 V begins to turn at some threshold and may be at its
/// best below the top; some run fully without a signal. Duty 0 is the signal at which it stands, and nothing in between.
/// </summary>
internal readonly record struct SignalMap
{
    private readonly double _least;
    private readonly double _most;
    private readonly bool _inverted;

    /// <summary>Makes one.</summary>
    /// <param name="least">Signal at which the device just turns, 0 to below <paramref name="most"/>.</param>
    /// <param name="most">Signal at full duty, at most 1.</param>
    /// <param name="inverted">True when a full signal stops the device.</param>
    /// <exception cref="ArgumentException">Bounds that are none.</exception>
    public SignalMap(double least, double most, bool inverted)
    {
        if (!(least >= 0 && least < most && most <= 1))
        {
            throw new ArgumentException($"Least is {least} and Most is {most}; allowed is 0 to 1, Least below Most.", nameof(least));
        }

        _least = least;
        _most = most;
        _inverted = inverted;
    }

    /// <summary>The signal at which the device stands, 0 or 1.</summary>
    public double Standing => _inverted ? 1 : 0;

    /// <summary>The signal of a duty, 0 to 1.</summary>
    /// <param name="duty">0 to 1.</param>
    public double Of(double duty)
    {
        if (duty <= 0)
        {
            return Standing;
        }

        double signal = _least + ((_most - _least) * duty);
        return _inverted ? 1 - signal : signal;
    }
}
