using PileController.Records;

namespace PileController.Watch;

/// <summary>What is known of the service at one moment.</summary>
/// <param name="TicksOnTime">The newest tick is young enough.</param>
/// <param name="RigAnswers">The newest readings came from the rig itself.</param>
/// <param name="RigObeys">The rig took the newest outputs.</param>
/// <param name="Record">How the record is.</param>
/// <param name="ProbesSilentSince">Since when no probe at all has answered though one had before, or null.</param>
public readonly record struct VitalSigns(bool TicksOnTime, bool RigAnswers, bool RigObeys, RecordHealth Record, TimeSpan? ProbesSilentSince);

/// <summary>
/// Decides whether the service proves its health. Whoever watches from outside makes the outputs safe and starts the
/// program anew when it does not. Pure.
/// </summary>
public static class Health
{
    /// <summary>How long all probes may be silent before the buses are worth a new start.</summary>
    public static readonly TimeSpan LongestSilence = TimeSpan.FromMinutes(10);

    /// <summary>Null while the service is well, else what is not.</summary>
    /// <remarks>
    /// A record that fails is told and does not count: heat must not hang on a memory card. Probes that never answered
    /// do not count either: a new start would change nothing, and the interlocks hold the draw.
    /// </remarks>
    public static string? Sickness(in VitalSigns signs)
    {
        if (!signs.TicksOnTime)
        {
            return "No tick has come on time.";
        }

        if (!signs.RigAnswers)
        {
            return "The rig does not answer.";
        }

        if (!signs.RigObeys)
        {
            return "The rig does not take its outputs.";
        }

        if (signs.ProbesSilentSince is { } silent && silent >= LongestSilence)
        {
            return $"No probe has answered for {silent.TotalMinutes:0} min.";
        }

        // A store that neither writes nor says what ails it is not known to be dead: nobody could tell the grower.
        return signs.Record is { Accepting: false, Fault: null } ? "The record takes nothing and does not say why." : null;
    }
}
