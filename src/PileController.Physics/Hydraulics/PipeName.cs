using System.Globalization;
using System.Text;

namespace PileController.Physics.Hydraulics;

/// <summary>Brings the many ways in which people write a pipe's name into one.</summary>
internal static class PipeName
{
    // Words that tell nothing apart.
    private static readonly string[] Idle = ["in", "inch", "inches", "pipe", "tube", "tubing", "od", "nominal"];

    /// <summary>Its telling words, in lower case and in order.</summary>
    public static string Key(string name) => string.Join(
        ' ', Words(name).Where(word => !Idle.Contains(word)).Select(Plain).Order(StringComparer.Ordinal));

    // A size and its unit may be written as one: "1/2in", "3/4\"".
    private static string[] Words(string name)
    {
        StringBuilder spaced = new();
        foreach (char c in name.Trim().ToLowerInvariant())
        {
            bool breaks = spaced.Length > 0 && char.IsAsciiLetter(c) != char.IsAsciiLetter(spaced[^1]);
            spaced.Append(breaks ? " " : "").Append(Spelled(c));
        }

        return spaced.ToString().Split(' ', StringSplitOptions.RemoveEmptyEntries);
    }

    private static string Spelled(char c) => c switch
    {
        '"' or '″' or '\'' or '-' or '_' or ',' => " ",
        '¼' => "1/4",
        '⅜' => "3/8",
        '½' => "1/2",
        '⅝' => "5/8",
        '¾' => "3/4",
        _ => c.ToString(),
    };

    // Trade sizes are eighths of an inch: "0.75" is "3/4".
    private static string Plain(string word)
    {
        if (word == "cu")
        {
            return "copper";
        }

        if (!decimal.TryParse(word, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out decimal inches) || inches >= 100)
        {
            return word;
        }

        decimal eighths = inches * 8;
        return eighths % 8 == 0 ? $"{eighths / 8:0}"
            : eighths % 4 == 0 ? $"{eighths / 4:0}/2"
            : eighths % 2 == 0 ? $"{eighths / 2:0}/4"
            : eighths % 1 == 0 ? $"{eighths:0}/8"
            : word;
    }
}
