using PileController.Control;
using PileController.Control.Decisions;
using PileController.Control.Readings;
using PileController.Records;
using PileController.Service;

namespace PileController.Alarms;

/// <summary>What alarms are judged by at one tick.</summary>
public sealed record AlarmFacts
{
    /// <summary>The moment.</summary>
    public required Instant At { get; init; }

    /// <summary>What was decided; null where control failed.</summary>
    public Decision? Decision { get; init; }

    /// <summary>What the rig said, before anybody judged it.</summary>
    public required RigReadings Raw { get; init; }

    /// <summary>How the record is.</summary>
    public required RecordHealth Record { get; init; }

    /// <summary>What took effect at this tick.</summary>
    public IReadOnlyList<Command> Commands { get; init; } = [];

    /// <summary>What was counted since the program started.</summary>
    public TickTally Tally { get; init; }

    /// <summary>What of it came since the tick before; set by the board.</summary>
    public TickTally Since { get; init; }

    /// <summary>
    /// What the actuators were told at the tick before, and so what the readings were made under; null where it is not known.
    /// Set by the board.
    /// </summary>
    public Outputs? Before { get; init; }

    /// <summary>Why messages have not gone out for an hour, or null.</summary>
    public string? PushTrouble { get; init; }

    /// <summary>The value of a reading that is believed, in the channel's unit; else null.</summary>
    public double? Value(Channel channel) => Decision is { } decision && decision.Readings.TryGet(channel, out double value) ? value : null;

    /// <summary>Who asked at this tick for a trip to be cleared; empty for somebody without a name, null where nobody did.</summary>
    /// <param name="interlock">The trip.</param>
    public string? ClearerOf(string interlock)
    {
        foreach (Command command in Commands)
        {
            if (command is ClearTrip clear && clear.Interlock == interlock)
            {
                return clear.Asker?.Name ?? string.Empty;
            }
        }

        return null;
    }

    /// <summary>The hottest heap probe that is believed, °C; null when none is.</summary>
    public double? HottestHeapC
    {
        get
        {
            double? hottest = null;
            for (Channel channel = Channel.HeapCore; channel <= Channel.HeapEdge; channel++)
            {
                hottest = Value(channel) is { } value && !(value < hottest) ? value : hottest;
            }

            return hottest;
        }
    }

    /// <summary>The tick as the loop told it.</summary>
    public static AlarmFacts Of(FollowedTick tick, string? pushTrouble) => new()
    {
        At = tick.At,
        Decision = tick.Decision,
        Raw = tick.Raw,
        Record = tick.Record,
        Commands = tick.Commands,
        Tally = tick.Tally,
        PushTrouble = pushTrouble,
    };
}
