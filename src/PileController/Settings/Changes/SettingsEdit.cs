namespace PileController.Settings.Changes;

/// <summary>What somebody wants changed.</summary>
/// <param name="Set">New values as JSON, by path.</param>
/// <param name="Reset">Paths that are to go back to what the file says.</param>
internal sealed record SettingsEdit(IReadOnlyDictionary<string, string> Set, IReadOnlyList<string> Reset);

/// <summary>One value that would be another.</summary>
/// <param name="Path">Which.</param>
/// <param name="Was">What it is now, as JSON.</param>
/// <param name="Is">What it would be, as JSON.</param>
internal sealed record SettingsDifference(string Path, string Was, string Is);

/// <summary>What an edit would come to.</summary>
/// <param name="Settings">The settings it makes; to be used only without faults.</param>
/// <param name="Text">Their text.</param>
/// <param name="Values">The values that then lie over the file.</param>
/// <param name="Faults">Everything wrong with it.</param>
/// <param name="Differences">What would be another than now.</param>
internal sealed record EditOutcome(
    PileSettings Settings, string Text, IReadOnlyDictionary<string, string> Values, IReadOnlyList<SettingsFault> Faults,
    IReadOnlyList<SettingsDifference> Differences);
