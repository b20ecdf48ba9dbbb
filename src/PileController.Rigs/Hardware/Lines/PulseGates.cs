namespace PileController.Rigs.Hardware.Lines;

/// <summary>What a meter's pulses came to since the look before.</summary>
/// <param name="PerSecond">Mean rate, 1/s.</param>
/// <param name="Bounced">True when there were more pulses than the meter can give; the rate is held to that.</param>
/// <param name="EndedAt">Time stamp at which the last of its gates closed.</param>
internal sealed record PulseRate(double PerSecond, bool Bounced, long EndedAt);

/// <summary>
/// Sorts pulses into gates of about a second and takes the mean over all gates since the last look, so that no pulse is
/// lost or counted twice between ticks, and a pump that runs for part of a tick shows its true mean.
/// </summary>
/// <param name="time">Clock.</param>
/// <param name="mostPerSecond">More than this in any gate is bounce, 1/s.</param>
internal sealed class PulseGates(TimeProvider time, double mostPerSecond)
{
    private long _openedAt = time.GetTimestamp();
    private long _countAtOpening;
    private double _pulses;
    private double _seconds;
    private bool _bounced;
    private PulseRate? _rate;

    /// <summary>Closes the gate that is open and opens the next.</summary>
    /// <param name="count">Pulses since the start.</param>
    public void Close(long count)
    {
        long now = time.GetTimestamp();
        double seconds = time.GetElapsedTime(_openedAt, now).TotalSeconds;
        if (seconds <= 0)
        {
            return;
        }

        // One more than the bound may fall into a gate by where its ends lie.
        double pulses = count - _countAtOpening;
        double most = (mostPerSecond * seconds) + 1;
        _bounced |= pulses > most;
        _pulses += Math.Min(pulses, most);
        _seconds += seconds;
        _countAtOpening = count;
        _openedAt = now;
    }

    /// <summary>Leaves out what the open gate has seen: its pulses cannot be trusted.</summary>
    /// <param name="count">Pulses since the start.</param>
    public void Discard(long count)
    {
        _countAtOpening = count;
        _openedAt = time.GetTimestamp();
        _pulses = _seconds = 0;
        _bounced = false;
        _rate = null;
    }

    /// <summary>
    /// The mean since the look before, up to this moment: what the open gate has seen belongs to it, or water that has stopped
    /// would seem to have moved until a gate later. The same once more where no gate has closed since; null before the first.
    /// </summary>
    /// <param name="count">Pulses since the start.</param>
    public PulseRate? Look(long count)
    {
        if (_seconds > 0)
        {
            Close(count);
            _rate = new PulseRate(_pulses / _seconds, _bounced, _openedAt);
            _pulses = _seconds = 0;
            _bounced = false;
        }

        return _rate;
    }
}
