namespace PileController.Settings;

/// <summary>Where a forecast of the weather comes from.</summary>
public sealed record ForecastSettings
{
    /// <summary>Path of a file with foretold weather, read again whenever it changes; empty for none.</summary>
    public string File { get; init; } = "";
}
