using Microsoft.Extensions.Time.Testing;

namespace PileController.Tests.Service;

/// <summary>A clock under test that stands still until moved, and whose wall time can jump while its monotonic time does not.</summary>
public sealed class JumpingClock(DateTimeOffset begins) : TimeProvider
{
    private readonly FakeTimeProvider _inner = new(begins);

    private int _timersMade;

    /// <summary>How many timers were made so far; a waiter must have made its own before the clock is moved for it.</summary>
    public int TimersMade => Volatile.Read(ref _timersMade);

    /// <summary>How far the wall clock has jumped.</summary>
    public TimeSpan Jump { get; set; }

    public override long TimestampFrequency => _inner.TimestampFrequency;

    public override DateTimeOffset GetUtcNow() => _inner.GetUtcNow() + Jump;

    public override long GetTimestamp() => _inner.GetTimestamp();

    public override ITimer CreateTimer(TimerCallback callback, object? state, TimeSpan dueTime, TimeSpan period)
    {
        ITimer timer = _inner.CreateTimer(callback, state, dueTime, period);
        Interlocked.Increment(ref _timersMade);
        return timer;
    }

    public void Advance(TimeSpan by) => _inner.Advance(by);
}
