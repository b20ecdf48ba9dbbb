namespace PileController.Settings;

/// <summary>What came of reading a settings file.</summary>
/// <param name="Settings">The effective settings; where a value was faulty its default stands in. To be used only without faults.</param>
/// <param name="Faults">Everything wrong, in the order of the file, then by cross-check.</param>
public sealed record SettingsResult(PileSettings Settings, IReadOnlyList<SettingsFault> Faults)
{
    /// <summary>What is allowed and a person should still know of; none beside faults.</summary>
    public IReadOnlyList<SettingsWarning> Warnings { get; init; } = [];
}
