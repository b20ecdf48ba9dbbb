using Microsoft.Extensions.Time.Testing;

namespace PileController.Tests.Service;

/// <summary>A clock under test that stands still until moved, and whose wall time can jump while its monotonic time does not.</summary>
public sealed class JumpingClock(DateTimeOffset begins) : TimeProvider
{
    private readonly FakeTimeProvider _inner = new(begins);

    /// <summary>How far the wall clock has jumped.</summary>
    public TimeSpan Jump { get; set; }

    public override long TimestampFrequency => _inner.TimestampFrequency;

    public override DateTimeOffset GetUtcNow() => _inner.GetUtcNow() + Jump;

    public override long GetTimestamp() => _inner.GetTimestamp();

    public override ITimer CreateTimer(TimerCallback callback, object? state, TimeSpan dueTime, TimeSpan period) =>
        _inner.CreateTimer(callback, state, dueTime, period);

    public void Advance(TimeSpan by) => _inner.Advance(by);
}
