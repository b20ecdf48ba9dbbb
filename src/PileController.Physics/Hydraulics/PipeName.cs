using System.Text;

namespace PileController.Physics.Hydraulics;

/// <summary>Brings the many ways in which people write a pipe's name into one.</summary>
internal static class PipeName
{
    // Words that tell nothing apart.
    private static readonly string[] Idle = ["in", "inch", "inches", "pipe", "tube", "tubing", "od", "nominal"];

    private static readonly Dictionary<string, string> Same = new()
    {
        ["0.25"] = "1/4", ["0.375"] = "3/8", ["0.5"] = "1/2", ["0.625"] = "5/8", ["0.75"] = "3/4", ["1.0"] = "1", ["cu"] = "copper",
        [".25"] = "1/4", [".375"] = "3/8", [".5"] = "1/2", [".625"] = "5/8", [".75"] = "3/4",
        ["¼"] = "1/4", ["⅜"] = "3/8", ["½"] = "1/2", ["⅝"] = "5/8", ["¾"] = "3/4",
    };

    /// <summary>Its telling words, in lower case and in order.</summary>
    public static string Key(string name) => string.Join(
        ' ', Words(name).Where(word => !Idle.Contains(word)).Select(word => Same.GetValueOrDefault(word, word)).Order(StringComparer.Ordinal));

    // A size and its unit may be written as one: "1/2in", "3/4\"".
    private static string[] Words(string name)
    {
        StringBuilder spaced = new();
        foreach (char c in name.Trim().ToLowerInvariant())
        {
            bool breaks = spaced.Length > 0 && char.IsAsciiLetter(c) != char.IsAsciiLetter(spaced[^1]);
            spaced.Append(breaks ? " " : "").Append(c is '"' or '″' or '\'' or '-' or '_' or ',' ? ' ' : c);
        }

        return spaced.ToString().Split(' ', StringSplitOptions.RemoveEmptyEntries);
    }
}
