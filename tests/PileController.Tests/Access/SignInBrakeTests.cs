using PileController.Access;

namespace PileController.Tests.Access;

public class SignInBrakeTests
{
    private const long Second = 1000;

    [Fact]
    public void Begin_AfterEachFailure_WaitsTwiceAsLongUpToAMinute()
    {
        SignInBrake brake = new();
        long now = 0;
        List<int> waits = [];
        for (int i = 0; i < 9; i++)
        {
            Assert.Null(brake.Begin("a", now));
            brake.End("a", false, now);
            int wait = brake.Begin("a", now)!.Value;
            waits.Add(wait);
            now += wait * Second;
        }

        Assert.Equal([1, 2, 4, 8, 16, 32, 60, 60, 60], waits);
    }

    [Fact]
    public void Begin_TriesWhileWaiting_MakeTheWaitNoLonger()
    {
        SignInBrake brake = new();
        brake.Begin("a", 0);
        brake.End("a", false, 0);
        for (int i = 0; i < 1000; i++)
        {
            Assert.Equal(1, brake.Begin("a", 500));
        }

        Assert.Null(brake.Begin("a", 1 * Second));
    }

    [Fact]
    public void Begin_OneAtATimeFromOneSource_AndNotHeldUpByAnother()
    {
        SignInBrake brake = new();

        Assert.Null(brake.Begin("a", 0));
        Assert.NotNull(brake.Begin("a", 0));
        Assert.Null(brake.Begin("b", 0));
    }

    [Fact]
    public void End_Good_ForgetsTheFailures()
    {
        SignInBrake brake = new();
        brake.Begin("a", 0);
        brake.End("a", false, 0);
        brake.Begin("a", 1 * Second);
        brake.End("a", true, 1 * Second);

        Assert.Null(brake.Begin("a", 1 * Second));
    }

    [Fact]
    public void Begin_AThousandSources_FailNoMoreThanTheBoundTogether()
    {
        SignInBrake brake = new();
        int tried = 0;
        for (int i = 0; i < 1000; i++)
        {
            if (brake.Begin($"source {i}", 0) is null)
            {
                tried++;
                brake.End($"source {i}", false, 0);
            }
        }

        Assert.InRange(tried, 20, 21);
        Assert.Null(brake.Begin("another", 3 * Second));
    }

    [Fact]
    public void Begin_AThousandSourcesAtOnce_RunNoMoreThanTheBoundTogether()
    {
        SignInBrake brake = new();
        string[] running = [.. Enumerable.Range(0, 1000).Select(i => $"source {i}").Where(source => brake.Begin(source, 0) is null)];

        Assert.InRange(running.Length, 20, 21);
        foreach (string source in running)
        {
            brake.End(source, null, 0);
        }

        Assert.Null(brake.Begin("another", 0));
    }

    [Fact]
    public void Begin_AQuarterOfAnHourLater_BeginsAnew()
    {
        SignInBrake brake = new();
        long now = 0;
        for (int i = 0; i < 7; i++)
        {
            brake.Begin("a", now);
            brake.End("a", false, now);
            now += 60 * Second;
        }

        now += 15 * 60 * Second;
        Assert.Null(brake.Begin("a", now));
        brake.End("a", false, now);
        Assert.Equal(1, brake.Begin("a", now));
    }
}
