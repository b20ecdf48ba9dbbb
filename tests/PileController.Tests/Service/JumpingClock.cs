using Microsoft.Extensions.Time.Testing;

namespace PileController.Tests.Service;

/// <summary>A clock under test whose wall time can jump while its monotonic time runs on.</summary>
public sealed class JumpingClock(DateTimeOffset begins) : FakeTimeProvider(begins)
{
    /// <summary>How far the wall clock has jumped.</summary>
    public TimeSpan Jump { get; set; }

    public override DateTimeOffset GetUtcNow() => base.GetUtcNow() + Jump;
}
