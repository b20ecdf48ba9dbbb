namespace PileController.Control.Readings;

/// <summary>Everything a rig said for one tick, one reading a channel. Not changed after it was made.</summary>
/// <threadsafety>Safe to share: the array is private and never written again.</threadsafety>
public sealed class RigReadings
{
    private readonly Reading[] _readings;

    /// <summary>Takes over the array (the caller keeps no reference).</summary>
    /// <param name="readings">One reading a channel, in the order of <see cref="Channel"/>.</param>
    /// <exception cref="ArgumentException">The array has not <see cref="ChannelTable.Count"/> entries.</exception>
    public RigReadings(Reading[] readings)
    {
        if (readings.Length != ChannelTable.Count)
        {
            throw new ArgumentException(
                $"Readings need {ChannelTable.Count} entries, one a channel; got {readings.Length}.", nameof(readings));
        }

        _readings = readings;
    }

    /// <summary>No probe fitted at all.</summary>
    public static RigReadings None { get; } = new(new Reading[ChannelTable.Count]);

    /// <summary>The reading of one channel.</summary>
    public Reading this[Channel channel] => _readings[(int)channel];

    /// <summary>All readings in channel order.</summary>
    public ReadOnlySpan<Reading> AsSpan() => _readings;

    /// <summary>
    /// The readings up to the last channel that says anything, but those of the first <see cref="ChannelTable.FirstCount"/> always.
    /// </summary>
    public ReadOnlySpan<Reading> Told()
    {
        int count = _readings.Length;
        while (count > ChannelTable.FirstCount && _readings[count - 1] == Reading.NotFitted)
        {
            count--;
        }

        return _readings.AsSpan(0, count);
    }

    /// <summary>True, and the value in the channel's unit, when the reading may be acted on.</summary>
    public bool TryGet(Channel channel, out double value)
    {
        Reading reading = _readings[(int)channel];
        value = reading.ValueOf(channel);
        return reading.IsGood;
    }

    /// <summary>A copy with one reading replaced.</summary>
    public RigReadings With(Channel channel, Reading reading)
    {
        Reading[] copy = (Reading[])_readings.Clone();
        copy[(int)channel] = reading;
        return new RigReadings(copy);
    }
}
