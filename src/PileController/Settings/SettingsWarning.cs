namespace PileController.Settings;

/// <summary>What a settings file may say and a person should know of.</summary>
/// <param name="Path">Where: "interlocks.noFlowTime".</param>
/// <param name="Given">What is given.</param>
/// <param name="Says">What comes of it, and what would mend it; without a full stop.</param>
/// <param name="Line">Line in the file, from 1, or null when it stands nowhere (a value left to its default).</param>
public sealed record SettingsWarning(string Path, string Given, string Says, int? Line = null)
{
    /// <summary>The warning in one sentence.</summary>
    public string Sentence => $"{(Line is int line ? $"line {line}: " : "")}{Path} is {Given}: {Says}.";
}
