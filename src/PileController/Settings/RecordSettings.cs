namespace PileController.Settings;

/// <summary>How long the record is kept.</summary>
public sealed record RecordSettings
{
    /// <summary>Days for which single ticks are kept (1 to 3660); summaries outlive them.</summary>
    public double KeepDays { get; init; } = 400;
}
