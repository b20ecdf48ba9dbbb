namespace PileController.Control.Interlocks;

/// <summary>What an interlock does when it acts.</summary>
public enum InterlockAction
{
    /// <summary>Stops the rig and latches; a person clears it once the cause is gone.</summary>
    Trip,

    /// <summary>Holds the water draw off while the cause stands.</summary>
    HoldWater,

    /// <summary>Holds the blower off while the cause stands.</summary>
    HoldAir,

    /// <summary>Holds all draw off while the cause stands.</summary>
    HoldAll,

    /// <summary>Moves water to keep the lines from freezing.</summary>
    GuardFrost,

    /// <summary>Says so and changes nothing.</summary>
    Warn,
}

/// <summary>One row of the interlock table, as people and the record see it.</summary>
/// <param name="Id">Short name, camelCase, stable for ever.</param>
/// <param name="Action">What it does.</param>
/// <param name="PersistenceMilliseconds">How long its limit must be passed before it acts.</param>
/// <param name="StaleActs">Whether a probe that cannot be believed counts as passing the limit.</param>
/// <param name="Sentence">What it tells the grower.</param>
/// <param name="Remedy">What the grower can do.</param>
public sealed record Interlock(
    string Id, InterlockAction Action, long PersistenceMilliseconds, bool StaleActs, string Sentence, string Remedy);
