using PileController.Control.Decisions;
using PileController.Control.Estimation;
using PileController.Control.Foresight;
using PileController.Control.Interlocks;
using PileController.Control.Modes;
using PileController.Control.Readings;
using PileController.Control.Regulation;

namespace PileController.Control;

/// <summary>
/// All that one tick hands to the next. Immutable; written as JSON at the head of each block of the record, so
/// that a recorded run can be taken up anywhere and replayed to the same bits.
/// </summary>
public sealed record Memory
{
    private static readonly Kept<Standing> FreshStanding = new(Standing.Fresh);
    private readonly Kept<Standing> _standing = FreshStanding;

    /// <summary>Number of the last tick.</summary>
    public long Sequence { get; init; }

    /// <summary>Moment of the last tick, monotonic; -1 before the first.</summary>
    public long LastMonotonicMilliseconds { get; init; } = -1;

    /// <summary>The mode.</summary>
    public Mode Mode { get => _standing.Value.Mode; init => Standing = Standing with { Mode = value }; }

    /// <summary>When the mode was entered, monotonic.</summary>
    public long ModeSinceMonotonicMilliseconds { get => _standing.Value.ModeSinceMonotonicMilliseconds; init => Standing = Standing with { ModeSinceMonotonicMilliseconds = value }; }

    /// <summary>Running totals.</summary>
    public Totals Totals { get; init; }

    /// <summary>What validation remembers, one a channel up to the last that is fitted. Unfolded anew at each call.</summary>
    public ProbeMemory[] Probes { get => Channels.Unfolded(); init => Channels = ProbeMemories.Of(value); }

    /// <summary>What the estimator remembers.</summary>
    public EstimatorMemory Estimator { get; init; } = EstimatorMemory.Fresh;

    /// <summary>What is remembered of the house.</summary>
    public HouseMemory House { get; init; } = HouseMemory.Fresh;

    /// <summary>What is remembered of the air outside.</summary>
    public WeatherMemory Weather { get; init; } = WeatherMemory.Fresh;

    /// <summary>The forecast that was last taken, or null.</summary>
    public Forecast? Forecast { get => _standing.Value.Forecast; init => Standing = Standing with { Forecast = value }; }

    /// <summary>The course that is followed.</summary>
    public Course Course { get => _standing.Value.Course; init => Standing = Standing with { Course = value }; }

    /// <summary>When the horizon last looked, monotonic; -1 while nothing can be foretold.</summary>
    public long LookedAtMonotonicMilliseconds { get => _standing.Value.LookedAtMonotonicMilliseconds; init => Standing = Standing with { LookedAtMonotonicMilliseconds = value }; }

    /// <summary>What the frost guard may come to take.</summary>
    public GuardNeed Guard { get => _standing.Value.Guard; init => Standing = Standing with { Guard = value }; }

    /// <summary>What is said of tonight.</summary>
    public TonightMemory Tonight { get => _standing.Value.Tonight; init => Standing = Standing with { Tonight = value }; }

    /// <summary>What the regulators remember.</summary>
    public RegulatorMemory Regulators { get; init; }

    /// <summary>What the interlocks remember, one a row of the table; later rows only once there is something to remember.</summary>
    public InterlockMemory[] Interlocks { get => _standing.Value.Interlocks; init => Standing = Standing with { Interlocks = value }; }

    /// <summary>What is held by hand.</summary>
    public HandHold[] Hands { get => _standing.Value.Hands; init => Standing = Standing with { Hands = value }; }

    /// <summary>Outputs are locked off for work on the rig.</summary>
    public bool Servicing { get => _standing.Value.Servicing; init => Standing = Standing with { Servicing = value }; }

    /// <summary>Since when flow has been proven without a break, monotonic; -1 when it is not.</summary>
    public long FlowSinceMonotonicMilliseconds { get => _standing.Value.FlowSinceMonotonicMilliseconds; init => Standing = Standing with { FlowSinceMonotonicMilliseconds = value }; }

    /// <summary>The probes not believed when that last got a line of its own, one bit a channel.</summary>
    public long ToldDoubtedProbes { get => _standing.Value.ToldDoubtedProbes; init => Standing = Standing with { ToldDoubtedProbes = value }; }

    /// <summary>When that was, monotonic; long ago before the first.</summary>
    public long ToldProbesAtMonotonicMilliseconds { get => _standing.Value.ToldProbesAtMonotonicMilliseconds; init => Standing = Standing with { ToldProbesAtMonotonicMilliseconds = value }; }

    /// <summary>The curb that was last given a line of its own.</summary>
    public Curb ToldCurb { get => _standing.Value.ToldCurb; init => Standing = Standing with { ToldCurb = value }; }

    /// <summary>When that was, monotonic.</summary>
    public long ToldCurbAtMonotonicMilliseconds { get => _standing.Value.ToldCurbAtMonotonicMilliseconds; init => Standing = Standing with { ToldCurbAtMonotonicMilliseconds = value }; }

    /// <summary>What the actuators were told.</summary>
    public Outputs Outputs { get => _standing.Value.Outputs; init => Standing = Standing with { Outputs = value }; }

    /// <summary><see cref="Probes"/> as a tick takes them.</summary>
    internal ProbeMemories Channels { get; init; } = ProbeMemories.Fresh;

    /// <summary>What stands for many ticks, as one.</summary>
    internal Standing Standing { get => _standing.Value; init => _standing = _standing.As(value); }

    /// <summary>A controller that has seen nothing yet.</summary>
    public static Memory Fresh { get; } = new();

    /// <summary>
    /// What is kept over a restart: totals, estimates, what was learned of house and weather, the forecast, latched trips. Nothing is running, nothing is held by hand, and
    /// the monotonic clock starts anew. A trip's cause is taken to stand until it is seen to be gone, and the estimate
    /// to hold only if the probes bear it out.
    /// </summary>
    public Memory AfterRestart()
    {
        bool tripped = Array.Exists(Interlocks, i => i.Latched);
        return new Memory
        {
            Sequence = Sequence,
            Mode = tripped ? Mode.Tripped : Servicing ? Mode.Servicing : Mode.Standby,
            Totals = Totals,
            Estimator = Estimator with { HotSinceMilliseconds = -1, Started = false },
            House = House,
            Weather = Weather,
            Forecast = Forecast,
            Tonight = Tonight.AfterRestart(),
            Interlocks = [.. Interlocks.Select(i => new InterlockMemory(-1, i.Latched, i.Latched))],
            Servicing = Servicing,
        };
    }
}
