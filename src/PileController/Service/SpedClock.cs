namespace PileController.Service;

/// <summary>
/// The demo's clock: it starts at a chosen moment and runs <see cref="Speed"/> times as fast as the clock inside it.
/// Wall time, timestamps and timers keep step with one another.
/// </summary>
/// <threadsafety>Safe for use by several threads.</threadsafety>
public sealed class SpedClock : TimeProvider
{
    private readonly TimeProvider _inner;
    private readonly DateTimeOffset _origin;
    private readonly long _innerStart;

    /// <summary>Starts the clock.</summary>
    /// <param name="inner">The clock that is sped up.</param>
    /// <param name="origin">What this clock says at this moment.</param>
    /// <param name="speed">How many times faster, 1 to 100 000.</param>
    /// <exception cref="ArgumentOutOfRangeException">The speed is outside its range.</exception>
    public SpedClock(TimeProvider inner, DateTimeOffset origin, double speed)
    {
        if (!(speed >= 1 && speed <= 100_000))
        {
            throw new ArgumentOutOfRangeException(nameof(speed), speed, "speed must be 1 to 100000.");
        }

        _inner = inner;
        _origin = origin;
        Speed = speed;
        _innerStart = inner.GetTimestamp();
    }

    /// <summary>How many times faster than the clock inside.</summary>
    public double Speed { get; }

    /// <inheritdoc/>
    public override long TimestampFrequency => TimeSpan.TicksPerSecond;

    /// <inheritdoc/>
    public override long GetTimestamp() => (long)(_inner.GetElapsedTime(_innerStart).Ticks * Speed);

    /// <inheritdoc/>
    public override DateTimeOffset GetUtcNow() => _origin.AddTicks(GetTimestamp());

    /// <inheritdoc/>
    public override ITimer CreateTimer(TimerCallback callback, object? state, TimeSpan dueTime, TimeSpan period) =>
        new SpedTimer(_inner.CreateTimer(callback, state, Shorten(dueTime), Shorten(period)), this);

    // Rounded up to a whole millisecond: a timer that fires early would make its waiter spin.
    private TimeSpan Shorten(TimeSpan span) =>
        span <= TimeSpan.Zero ? span : TimeSpan.FromMilliseconds(Math.Ceiling(span.TotalMilliseconds / Speed));

    private sealed class SpedTimer(ITimer inner, SpedClock clock) : ITimer
    {
        public bool Change(TimeSpan dueTime, TimeSpan period) => inner.Change(clock.Shorten(dueTime), clock.Shorten(period));

        public void Dispose() => inner.Dispose();

        public ValueTask DisposeAsync() => inner.DisposeAsync();
    }
}
