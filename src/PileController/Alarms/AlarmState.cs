using PileController.Control.Decisions;
using PileController.Service;

namespace PileController.Alarms;

/// <summary>All that is remembered of the alarms from tick to tick. Never changed, always copied.</summary>
public sealed record AlarmState
{
    /// <summary>Events kept.</summary>
    public const int MostRecent = 300;

    /// <summary>Time the board has run, s: counted from ticks, at most two minutes each.</summary>
    public double Seconds { get; init; }

    /// <summary>The monotonic clock at the last tick, ms; -1 before the first of this run of the program.</summary>
    public long LastMonotonicMilliseconds { get; init; } = -1;

    /// <summary>What was counted at the last tick.</summary>
    public TickTally Tally { get; init; }

    /// <summary>What the actuators were told at the last tick; null before the first of this run of the program.</summary>
    public Outputs? Outputs { get; init; }

    /// <summary>Number of the last event.</summary>
    public long Number { get; init; }

    /// <summary>One a row of the table.</summary>
    public required IReadOnlyList<AlarmMemory> Rows { get; init; }

    /// <summary>What happened, oldest first.</summary>
    public IReadOnlyList<AlarmEvent> Recent { get; init; } = [];

    /// <summary>Nothing seen yet.</summary>
    public static AlarmState Fresh(AlarmTable table) => new() { Rows = [.. Enumerable.Repeat(AlarmMemory.Fresh, table.Rows.Count)] };

    /// <summary>With events at its end, the oldest dropped.</summary>
    internal AlarmState With(IReadOnlyList<AlarmEvent> events) => events.Count == 0
        ? this
        : this with { Number = events[^1].Number, Recent = [.. Recent.Skip(Math.Max(0, Recent.Count + events.Count - MostRecent)), .. events] };

    /// <summary>With another memory of one row.</summary>
    internal AlarmState With(int row, AlarmMemory memory)
    {
        AlarmMemory[] rows = [.. Rows];
        rows[row] = memory;
        return this with { Rows = rows };
    }
}
