namespace PileController.Alarms;

/// <summary>What happened to an alarm.</summary>
public enum AlarmEventKind
{
    /// <summary>It rose.</summary>
    Raised = 0,

    /// <summary>It ended: by itself, or by who cleared its trip.</summary>
    Returned,

    /// <summary>A person has seen it.</summary>
    Seen,

    /// <summary>It still stands and asks to be seen again.</summary>
    Reminded,

    /// <summary>A person has shelved it.</summary>
    Shelved,

    /// <summary>A person has taken it off the shelf.</summary>
    Unshelved,

    /// <summary>Its time on the shelf is over.</summary>
    ShelfEnded,
}

/// <summary>One line of the alarms' history.</summary>
/// <param name="Number">Grows by one each event for the life of the file.</param>
/// <param name="Kind">What happened.</param>
/// <param name="Key">Which alarm.</param>
/// <param name="UtcMilliseconds">Wall time, a label, ms since 1970-01-01T00:00Z.</param>
/// <param name="FirstUp">Whether it is the first of its group.</param>
/// <param name="Quiet">Whether nobody is to be told: it happened on the shelf.</param>
/// <param name="Who">Who did it, empty for somebody without a name; null for nobody.</param>
/// <param name="Detail">What is the matter, or null.</param>
public sealed record AlarmEvent(
    long Number, AlarmEventKind Kind, string Key, long UtcMilliseconds, bool FirstUp = false, bool Quiet = false, string? Who = null,
    string? Detail = null);
