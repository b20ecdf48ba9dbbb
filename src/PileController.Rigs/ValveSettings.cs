using PileController.Control.Regulation;

namespace PileController.Rigs;

/// <summary>What the motor valve does when the outputs are told to be safe.</summary>
public enum ValveSafe
{
    /// <summary>It stops where it is.</summary>
    Stays = 0,

    /// <summary>It runs shut, and then stops.</summary>
    Shut,

    /// <summary>It runs open, and then stops.</summary>
    Open,
}

/// <summary>Where the three-wire motor valve of the real rig is wired: one line runs it open, one runs it shut, none stops it.</summary>
public sealed record ValveSettings
{
    /// <summary>Line that runs it open, or null when no valve is fitted.</summary>
    public int? OpenLine { get; init; }

    /// <summary>Line that runs it shut, or null when no valve is fitted.</summary>
    public int? ShutLine { get; init; }

    /// <summary>Input that tells that it stands open, or null.</summary>
    public int? OpenEndLine { get; init; }

    /// <summary>Input that tells that it stands shut, or null.</summary>
    public int? ShutEndLine { get; init; }

    /// <summary>True when a low input tells that it stands there.</summary>
    public bool EndsActiveLow { get; init; }

    /// <summary>Least rest of the motor between its two directions, s (common practice, no source).</summary>
    public double DeadTimeSeconds { get; init; } = 1;

    /// <summary>What it does when the outputs are told to be safe.</summary>
    public ValveSafe Safe { get; init; }

    /// <summary>True when a bleed round the shut valve lets the line above it drain.</summary>
    public bool Bleeds { get; init; }

    /// <summary>True when a valve is wired.</summary>
    public bool IsFitted => OpenLine is not null && ShutLine is not null;
}

/// <summary>How the motor valve moves.</summary>
/// <param name="TravelSeconds">From shut to open, s (above 0).</param>
/// <param name="Feedback">What it tells of where it stands.</param>
public readonly record struct ValveMotion(double TravelSeconds, ValveFeedback Feedback);
