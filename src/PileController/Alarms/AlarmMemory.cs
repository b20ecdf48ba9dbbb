namespace PileController.Alarms;

/// <summary>Where an alarm is.</summary>
public enum AlarmPhase
{
    /// <summary>Its sign does not hold.</summary>
    Off = 0,

    /// <summary>Its sign holds, not yet for long enough; or it follows from another that stands.</summary>
    Pending,

    /// <summary>It stands.</summary>
    Standing,
}

/// <summary>What is remembered of one alarm. Times are the board's running seconds, which no clock can move.</summary>
public sealed record AlarmMemory
{
    /// <summary>An alarm that never was.</summary>
    public static AlarmMemory Fresh { get; } = new();

    /// <summary>Where it is.</summary>
    public AlarmPhase Phase { get; init; }

    /// <summary>When its sign began, s.</summary>
    public double BeganSeconds { get; init; }

    /// <summary>When its sign was last there, s.</summary>
    public double LastSeconds { get; init; }

    /// <summary>When it rose, or was last seen while it stood, s: reminders are counted from here.</summary>
    public double ToldSeconds { get; init; }

    /// <summary>Whether nobody has seen it since it rose; it may have ended meanwhile.</summary>
    public bool Unseen { get; init; }

    /// <summary>Who saw it, or null.</summary>
    public string? SeenBy { get; init; }

    /// <summary>Who ended it by clearing its trip, empty for somebody without a name; null where it stands or ended by itself.</summary>
    public string? ClearedBy { get; init; }

    /// <summary>Whether it was the first of its group.</summary>
    public bool FirstUp { get; init; }

    /// <summary>Key of the standing alarm it follows from and is held back by, or null.</summary>
    public string? HeldBackBy { get; init; }

    /// <summary>When its shelving ends, s; 0 when it is not shelved.</summary>
    public double ShelvedUntilSeconds { get; init; }

    /// <summary>Who shelved it, or null.</summary>
    public string? ShelvedBy { get; init; }

    /// <summary>Wall time at which it rose, ms since 1970-01-01T00:00Z; a label.</summary>
    public long RaisedUtcMilliseconds { get; init; }

    /// <summary>What was the matter when it rose, or null.</summary>
    public string? Detail { get; init; }

    /// <summary>Whether it is shelved.</summary>
    [System.Text.Json.Serialization.JsonIgnore]
    public bool Shelved => ShelvedUntilSeconds > 0;

    /// <summary>Whether it is on a person's list: it stands, or has ended unseen, and is not shelved.</summary>
    [System.Text.Json.Serialization.JsonIgnore]
    public bool Listed => !Shelved && (Phase == AlarmPhase.Standing || Unseen);
}
