using PileController.Alarms;
using PileController.Control.Decisions;
using PileController.Control.Modes;
using PileController.Rigs.Faults;

namespace PileController.Tests.Alarms;

/// <summary>The demo's holding with one fault, beside the same without it.</summary>
internal sealed class FaultTrial
{
    private const int TickMilliseconds = 10_000;
    private readonly FaultBoard _board = new();
    private readonly AlarmRun _ill;
    private readonly AlarmRun _sound = AlarmRun.OfDemo(new FaultBoard());
    private bool _twinIsOver;

    public FaultTrial() => _ill = AlarmRun.OfDemo(_board);

    public AlarmTable Table => _ill.Table;

    /// <summary>When the fault first made a difference to what the rig says, monotonic ms; null when it has not yet.</summary>
    public long? ShownAt { get; private set; }

    /// <summary>When the rig first stood tripped, monotonic ms; null when it has not.</summary>
    public long? TrippedAt { get; private set; }

    /// <summary>What rose because of the fault: the weather raises its own on both.</summary>
    public List<AlarmEvent> Raised => [.. _ill.Raised.Where(one => _sound.Raised.All(other => other.Key != one.Key))];

    public void Inject(Fault fault) => _board.Add(fault);

    /// <summary>Lets both live so many ticks. The twin stops once the fault has shown, unless told otherwise.</summary>
    public void Live(int ticks, IReadOnlyList<Command>? commands = null, bool twin = false)
    {
        for (int i = 0; i < ticks; i++)
        {
            Decision decision = _ill.Tick(i == 0 ? commands : null);
            TrippedAt ??= decision.Mode == Mode.Tripped ? decision.At.MonotonicMilliseconds : null;
            _twinIsOver |= ShownAt is not null && !twin;
            if (_twinIsOver)
            {
                continue;
            }

            Decision other = _sound.Tick(i == 0 ? commands : null);
            if (ShownAt is null && !decision.Readings.AsSpan().SequenceEqual(other.Readings.AsSpan()))
            {
                ShownAt = decision.At.MonotonicMilliseconds;
            }
        }
    }

    /// <summary>How long after a moment an alarm rose, in ticks.</summary>
    public double TicksAfter(long sinceMilliseconds, string key) =>
        (Raised.First(one => one.Key == key).UtcMilliseconds - sinceMilliseconds) / (double)TickMilliseconds;

    public override string ToString() => string.Join(", ", Raised.Select(one => $"{one.Key} at {one.UtcMilliseconds}"));
}
