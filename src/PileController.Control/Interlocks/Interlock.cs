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

/// <summary>Which side of the limit is the wrong one.</summary>
public enum Comparison
{
    /// <summary>The signal is above the limit.</summary>
    Above,

    /// <summary>The signal is below the limit.</summary>
    Below,
}

/// <summary>One row of the interlock table.</summary>
/// <param name="Id">Short name, camelCase, stable for ever.</param>
/// <param name="Source">What is watched.</param>
/// <param name="Comparison">Which side of the limit is wrong.</param>
/// <param name="Limit">The limit, from the settings.</param>
/// <param name="ReleaseBand">How far the signal must come back past the limit before the interlock lets go, in the signal's unit.</param>
/// <param name="PersistenceMilliseconds">How long the limit must be passed before it acts.</param>
/// <param name="StaleActs">Whether a source that cannot be believed counts as passing the limit.</param>
/// <param name="Action">What it does.</param>
/// <param name="Sentence">What it tells the grower.</param>
/// <param name="Remedy">What the grower can do.</param>
public sealed record Interlock(
    string Id, Signal Source, Comparison Comparison, Func<ControlSettings, double> Limit, double ReleaseBand,
    long PersistenceMilliseconds, bool StaleActs, InterlockAction Action, string Sentence, string Remedy);
