using Microsoft.Extensions.Logging.Abstractions;
using PileController.Control;
using PileController.Service;
using PileController.Tests.Support;

namespace PileController.Tests.Service;

/// <summary>A loop over a fake rig and a clock that stands still until it is moved.</summary>
internal sealed class LoopBench : IDisposable
{
    private int _moves;

    public LoopBench(StepFunction? step = null, Memory? start = null, TimeProvider? trueTime = null, int restarts = 0)
    {
        TickSettings settings = new()
        {
            Control = new ControlSettings(),
            Start = start ?? Memory.Fresh,
            Step = step ?? Control.Step,
            TrueTime = trueTime ?? TimeProvider.System,
            Restarts = restarts,
            Fitted = [PileController.Control.Readings.Channel.House],
        };
        Inbox = new CommandInbox(settings.Start.Sequence + 1);
        Feed = new PanelFeed(Clock);
        TickRunner runner = new(Rig, Record, Inbox, Feed, Trail, Counts, settings, NullLogger<TickRunner>.Instance);
        Loop = new TickLoop(runner, Counts, settings, Clock, NullLogger<TickLoop>.Instance);
    }

    public JumpingClock Clock { get; } = new(PanelHost.Begins);

    public FakeRig Rig { get; } = new() { Reads = MadeUp.Readings };

    public FakeRecord Record { get; } = new();

    public CannedControl Control { get; } = new();

    public TickCounts Counts { get; } = new();

    public CommandInbox Inbox { get; }

    public PanelFeed Feed { get; }

    public TickTrail Trail { get; } = new();

    public TickLoop Loop { get; }

    public async Task StartAsync()
    {
        await Loop.StartingAsync(CancellationToken.None);
        await Loop.StartAsync(CancellationToken.None);
    }

    /// <summary>Moves the clock once the loop waits on it; else the loop would set its timer after the move and wait for ever.</summary>
    public async Task AdvanceAsync(TimeSpan by)
    {
        int timers = ++_moves;
        await UntilAsync(() => Clock.TimersMade >= timers);
        Clock.Advance(by);
    }

    /// <summary>Waits until a tick is told.</summary>
    public async Task<TickNews> ToldAsync(long sequence) => await Feed.AfterAsync(sequence - 1, CancellationToken.None);

    /// <summary>Waits until something holds that the loop brings about by itself.</summary>
    public static async Task UntilAsync(Func<bool> holds)
    {
        using CancellationTokenSource patience = new(TimeSpan.FromSeconds(20));
        while (!holds())
        {
            await Task.Delay(5, patience.Token);
        }
    }

    public void Dispose() => Loop.Dispose();
}
