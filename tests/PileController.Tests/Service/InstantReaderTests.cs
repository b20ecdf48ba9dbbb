using System.Globalization;
using Microsoft.Extensions.Time.Testing;
using PileController.Control;
using PileController.Service;
using PileController.Settings;

namespace PileController.Tests.Service;

public class InstantReaderTests
{
    private static readonly TimeSpan Tick = TimeSpan.FromSeconds(10);

    // New York changes its clocks at two in the morning: from -5 h to -4 h in March and back in November (IANA time-zone data).
    [Theory]
    [InlineData("2026-03-08T06:59:50Z", -300, -240, 3.0)]
    [InlineData("2026-11-01T05:59:50Z", -240, -300, 1.0)]
    public void Now_AcrossAChangeOfTheClocks_FollowsTheZoneAndKeepsItsPace(string before, int offsetBefore, int offsetAfter, double hourAfter)
    {
        FakeTimeProvider clock = new(DateTimeOffset.Parse(before, CultureInfo.InvariantCulture));
        TickSettings settings = new() { Control = new ControlSettings(), OffsetMinutesAt = new Site { TimeZone = "America/New_York" }.OffsetMinutesAt };
        InstantReader instants = new(clock, settings);

        Instant last = instants.Now();
        clock.Advance(Tick);
        Instant first = instants.Now();

        Assert.Equal((offsetBefore, offsetAfter), (last.OffsetMinutes, first.OffsetMinutes));
        Assert.Equal(10_000, first.MonotonicMilliseconds - last.MonotonicMilliseconds);
        Assert.Equal(10_000, first.UtcMilliseconds - last.UtcMilliseconds);
        Assert.Equal(hourAfter, first.LocalHour, 9);
    }
}
