using PileController.Control;
using PileController.Records;
using PileController.Service;
using PileController.Tests.Support;

namespace PileController.Tests.Service;

public sealed class TickTrailTests
{
    private static readonly TimeSpan Tick = TimeSpan.FromSeconds(10);

    [Fact]
    public async Task Trail_AStepThatFails_TellsThatTickWithoutADecision()
    {
        CannedControl control = new();
        int steps = 0;
        using LoopBench bench = new((settings, memory, readings, commands, at) =>
            ++steps == 2 ? throw new InvalidOperationException("no root found") : control.Step(settings, memory, readings, commands, at));
        await bench.StartAsync();
        await bench.ToldAsync(1);
        await bench.AdvanceAsync(Tick);
        await LoopBench.UntilAsync(() => bench.Trail.Ticks.Count == 2);
        await bench.AdvanceAsync(Tick);
        await LoopBench.UntilAsync(() => bench.Trail.Ticks.Count == 3);
        await bench.Loop.StopAsync(CancellationToken.None);

        List<FollowedTick> told = [];
        while (bench.Trail.Ticks.TryRead(out FollowedTick? tick))
        {
            told.Add(tick);
        }

        Assert.Equal([true, false, true], told.Select(tick => tick.Decision is not null));
        Assert.Equal([0, 1, 1], told.Select(tick => tick.Tally.StepFaults));
    }

    [Fact]
    public void Tell_AFollowerThatStandsStill_CostsTheOldestTicks()
    {
        TickTrail trail = new();
        for (int i = 0; i < TickTrail.Capacity + 7; i++)
        {
            trail.Tell(new FollowedTick(new Instant(i, i, 0), null, MadeUp.Readings(default), new RecordHealth(true, i, 0, 0, null), default));
        }

        Assert.Equal(TickTrail.Capacity, trail.Ticks.Count);
        Assert.True(trail.Ticks.TryRead(out FollowedTick? oldest));
        Assert.Equal(7, oldest.At.UtcMilliseconds);
    }
}
