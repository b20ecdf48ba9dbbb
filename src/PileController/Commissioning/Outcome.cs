namespace PileController.Commissioning;

/// <summary>How a test came out.</summary>
public enum Soundness
{
    /// <summary>Proven.</summary>
    Sound = 0,

    /// <summary>Something was found, but not well enough to rest on.</summary>
    Doubtful,

    /// <summary>Not proven, or proven bad.</summary>
    Failed,
}

/// <summary>What a test found of one thing.</summary>
/// <param name="Subject">The channel or actuator by its name on the wire, or "loop", "flowMeter", "windDown".</param>
/// <param name="Verdict">How it came out.</param>
/// <param name="Sentence">One sentence for people.</param>
internal sealed record Outcome(string Subject, Soundness Verdict, string Sentence)
{
    /// <summary>The figure, in <see cref="Unit"/>; null where there is none.</summary>
    public double? Figure { get; init; }

    /// <summary>Unit of the figure; empty without one.</summary>
    public string Unit { get; init; } = "";

    /// <summary>Expanded uncertainty of the figure (k = 2), in <see cref="Unit"/>; null where none can be told.</summary>
    public double? Uncertainty { get; init; }

    /// <summary>Settings that would take the figure over.</summary>
    public IReadOnlyList<SettingsLine> Adopt { get; init; } = [];

    /// <summary>The text of a file that holds the figures; null without one.</summary>
    public string? File { get; init; }
}

/// <summary>One setting as it would be written.</summary>
/// <param name="Path">Where it stands: "rig.pulsesPerLitre"; of a probe "rig.probes (supply) offset".</param>
/// <param name="Json">The value as JSON.</param>
/// <param name="FromPage">Whether the page may change it; else it is written into the settings file by hand.</param>
internal sealed record SettingsLine(string Path, string Json, bool FromPage);
