namespace PileController.Alarms;

/// <summary>What people do with alarms. Pure.</summary>
public static class AlarmHands
{
    /// <summary>Longest time an alarm may be shelved, s.</summary>
    public const double MostShelvedSeconds = 24 * 3600;

    /// <summary>The same for an alarm that protects people, s.</summary>
    public const double MostShelvedOfPeopleSeconds = 30 * 60;

    /// <summary>A person has seen an alarm that stands, or that ended unseen. What has been seen already stays as it is.</summary>
    public static (AlarmState State, IReadOnlyList<AlarmEvent> Events) See(AlarmTable table, AlarmState state, int row, string who, long utcMilliseconds)
    {
        AlarmMemory memory = state.Rows[row];
        return memory.Unseen
            ? Done(table, state, row, memory with { Unseen = false, SeenBy = who, ToldSeconds = state.Seconds }, AlarmEventKind.Seen, who, utcMilliseconds)
            : (state, []);
    }

    /// <summary>Why an alarm may not be shelved for so long, or null.</summary>
    public static string? WhyNotShelved(AlarmRow row, double seconds) => seconds <= row.MostShelvedSeconds
        ? null
        : row.ProtectsPeople
            ? $"\"{row.Name}\" protects people: it may be shelved for at most {MostShelvedOfPeopleSeconds / 60} minutes, so that nobody who comes later goes unwarned."
            : $"\"{row.Name}\" may be shelved for at most {MostShelvedSeconds / 3600} hours; shelve it again when they are over.";

    /// <summary>A person puts an alarm on the shelf: it is not listed, not told and lights no lamp until the time is over.</summary>
    /// <param name="table">The rows.</param>
    /// <param name="state">The alarms.</param>
    /// <param name="row">Which.</param>
    /// <param name="seconds">For how long the board runs on, s; above 0 and at most <see cref="AlarmRow.MostShelvedSeconds"/>.</param>
    /// <param name="who">Who.</param>
    /// <param name="utcMilliseconds">Wall time, ms since 1970-01-01T00:00Z.</param>
    /// <exception cref="ArgumentOutOfRangeException">The time is not allowed.</exception>
    public static (AlarmState State, IReadOnlyList<AlarmEvent> Events) Shelve(
        AlarmTable table, AlarmState state, int row, double seconds, string who, long utcMilliseconds)
    {
        if (!(seconds > 0) || WhyNotShelved(table.Rows[row], seconds) is not null)
        {
            throw new ArgumentOutOfRangeException(nameof(seconds), seconds, $"Allowed: above 0 and at most {table.Rows[row].MostShelvedSeconds}.");
        }

        AlarmMemory shelved = state.Rows[row] with { ShelvedUntilSeconds = state.Seconds + seconds, ShelvedBy = who };
        return Done(table, state, row, shelved, AlarmEventKind.Shelved, who, utcMilliseconds);
    }

    /// <summary>A person takes an alarm off the shelf. What is not on it stays as it is.</summary>
    public static (AlarmState State, IReadOnlyList<AlarmEvent> Events) Unshelve(
        AlarmTable table, AlarmState state, int row, string who, long utcMilliseconds)
    {
        AlarmMemory memory = state.Rows[row];
        return memory.Shelved
            ? Done(table, state, row, OffTheShelf(memory, state.Seconds), AlarmEventKind.Unshelved, who, utcMilliseconds)
            : (state, []);
    }

    /// <summary>What stands when its shelving ends is to be seen again; what ended meanwhile is over.</summary>
    internal static AlarmMemory OffTheShelf(AlarmMemory memory, double seconds) => memory with
    {
        ShelvedUntilSeconds = 0,
        ShelvedBy = null,
        Unseen = memory.Phase == AlarmPhase.Standing,
        SeenBy = null,
        ToldSeconds = seconds,
    };

    private static (AlarmState State, IReadOnlyList<AlarmEvent> Events) Done(
        AlarmTable table, AlarmState state, int row, AlarmMemory next, AlarmEventKind kind, string who, long utcMilliseconds)
    {
        AlarmLog log = new(state.Number, utcMilliseconds);
        log.Add(kind, table.Rows[row].Key, next, quiet: true, who);
        return (state.With(row, next).With(log.Events), log.Events);
    }
}
