namespace PileController.Settings;

/// <summary>One thing wrong with a settings file.</summary>
/// <param name="Path">Where: "heap.coil.length", "rig.probes[3].radius"; empty for the file as a whole.</param>
/// <param name="Given">What was given.</param>
/// <param name="Allowed">What is allowed instead.</param>
/// <param name="Line">Line in the file, from 1, or null when it stands nowhere (a value left to its default).</param>
public sealed record SettingsFault(string Path, string Given, string Allowed, int? Line = null)
{
    /// <summary>The fault in one sentence.</summary>
    public string Sentence
    {
        get
        {
            string where = Line is int line ? $"line {line}: " : "";
            string what = Path.Length > 0 ? $"{Path} is {Given}" : Given;
            return $"{where}{what}; allowed: {Allowed}.";
        }
    }
}
