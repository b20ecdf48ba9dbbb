using PileController.Service;

namespace PileController.Tests.Service;

public class TickPacerTests
{
    [Fact]
    public void Pacer_OnTime_KeepsTheGrid()
    {
        TickPacer pacer = new(0, 10_000);

        Assert.Equal(new Pace(0, 0), pacer.Begin(0));
        Assert.Equal(10_000, pacer.DueMilliseconds);
    }

    [Fact]
    public void Pacer_LittleLate_DoesNotDrift()
    {
        TickPacer pacer = new(0, 10_000);

        Assert.Equal(new Pace(700, 0), pacer.Begin(700));
        Assert.Equal(10_000, pacer.DueMilliseconds);
    }

    [Theory]
    [InlineData(9_999, 0, 10_000)]
    [InlineData(10_000, 1, 20_000)]
    [InlineData(34_000, 3, 40_000)]
    public void Pacer_ManyTicksLate_CountsThoseThatFellOut(long now, long missed, long due)
    {
        TickPacer pacer = new(0, 10_000);

        Assert.Equal(new Pace(now, missed), pacer.Begin(now));
        Assert.Equal(due, pacer.DueMilliseconds);
    }
}
