using Microsoft.Extensions.Time.Testing;
using PileController.Service;

namespace PileController.Tests.Service;

public class SpedClockTests
{
    private static readonly DateTimeOffset Origin = new(2013, 1, 28, 5, 0, 0, TimeSpan.Zero);

    [Fact]
    public void SpedClock_InnerMinute_IsAnHourAtSpeedSixty()
    {
        FakeTimeProvider inner = new();
        SpedClock clock = new(inner, Origin, 60);
        long start = clock.GetTimestamp();

        inner.Advance(TimeSpan.FromMinutes(1));

        Assert.Equal(Origin.AddHours(1), clock.GetUtcNow());
        Assert.Equal(TimeSpan.FromHours(1), clock.GetElapsedTime(start));
    }

    [Fact]
    public async Task SpedClock_Delay_EndsAfterItsShareOfInnerTime()
    {
        FakeTimeProvider inner = new();
        SpedClock clock = new(inner, Origin, 60);
        Task delay = Task.Delay(TimeSpan.FromMinutes(1), clock);

        inner.Advance(TimeSpan.FromMilliseconds(999));
        Assert.False(delay.IsCompleted);

        inner.Advance(TimeSpan.FromMilliseconds(1));
        await delay;
        Assert.True(clock.GetUtcNow() - Origin >= TimeSpan.FromMinutes(1));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(0.5)]
    [InlineData(1e6)]
    [InlineData(double.NaN)]
    public void SpedClock_SpeedOutsideItsRange_IsRefused(double speed) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => new SpedClock(TimeProvider.System, Origin, speed));
}
