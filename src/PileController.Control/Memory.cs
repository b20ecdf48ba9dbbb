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
    /// <summary>Number of the last tick.</summary>
    public long Sequence { get; init; }

    /// <summary>Moment of the last tick, monotonic; -1 before the first.</summary>
    public long LastMonotonicMilliseconds { get; init; } = -1;

    /// <summary>The mode.</summary>
    public Mode Mode { get; init; }

    /// <summary>When the mode was entered, monotonic.</summary>
    public long ModeSinceMonotonicMilliseconds { get; init; }

    /// <summary>Running totals.</summary>
    public Totals Totals { get; init; }

    /// <summary>What validation remembers, one a channel.</summary>
    public ProbeMemory[] Probes { get; init; } = Repeat(ProbeMemory.Fresh, ChannelTable.Count);

    /// <summary>What the estimator remembers.</summary>
    public EstimatorMemory Estimator { get; init; } = EstimatorMemory.Fresh;

    /// <summary>What is remembered of the house.</summary>
    public HouseMemory House { get; init; } = HouseMemory.Fresh;

    /// <summary>What is remembered of the air outside.</summary>
    public WeatherMemory Weather { get; init; } = WeatherMemory.Fresh;

    /// <summary>The forecast that was last taken, or null.</summary>
    public Forecast? Forecast { get; init; }

    /// <summary>The course that is followed.</summary>
    public Course Course { get; init; } = Course.Usual;

    /// <summary>When the horizon last looked, monotonic; -1 while nothing can be foretold.</summary>
    public long LookedAtMonotonicMilliseconds { get; init; } = -1;

    /// <summary>What is said of tonight.</summary>
    public TonightMemory Tonight { get; init; } = TonightMemory.Fresh;

    /// <summary>What the regulators remember.</summary>
    public RegulatorMemory Regulators { get; init; }

    /// <summary>What the interlocks remember, one a row of the table.</summary>
    public InterlockMemory[] Interlocks { get; init; } = Repeat(InterlockMemory.Fresh, InterlockTable.All.Count);

    /// <summary>What is held by hand.</summary>
    public HandHold[] Hands { get; init; } = [];

    /// <summary>Outputs are locked off for work on the rig.</summary>
    public bool Servicing { get; init; }

    /// <summary>Since when flow has been proven without a break, monotonic; -1 when it is not.</summary>
    public long FlowSinceMonotonicMilliseconds { get; init; } = -1;

    /// <summary>The probes not believed when that last got a line of its own, one bit a channel.</summary>
    public long ToldDoubtedProbes { get; init; }

    /// <summary>When that was, monotonic; long ago before the first.</summary>
    public long ToldProbesAtMonotonicMilliseconds { get; init; } = -3_600_000;

    /// <summary>The curb that was last given a line of its own.</summary>
    public Curb ToldCurb { get; init; }

    /// <summary>When that was, monotonic.</summary>
    public long ToldCurbAtMonotonicMilliseconds { get; init; }

    /// <summary>What the actuators were told.</summary>
    public Outputs Outputs { get; init; }

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

    private static T[] Repeat<T>(T value, int count)
    {
        T[] array = new T[count];
        Array.Fill(array, value);
        return array;
    }
}
