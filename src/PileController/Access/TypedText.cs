using System.Globalization;
using System.Text;

namespace PileController.Access;

/// <summary>What a person may type as a name or a note.</summary>
internal static class TypedText
{
    // Scripts and emoji need these two to join and part letters.
    private const int NonJoiner = 0x200C;
    private const int Joiner = 0x200D;

    /// <summary>Whether a text is of an allowed length, and all of it can be seen.</summary>
    /// <param name="text">The text.</param>
    /// <param name="longest">Its greatest length, characters.</param>
    public static bool Allows(string text, int longest) =>
        text.Length >= 1 && text.Length <= longest && !text.EnumerateRunes().Any(IsHidden);

    /// <summary>Whether a character shows nothing itself and changes what stands beside it: it could turn a line round, break it, or make one name look like another.</summary>
    public static bool IsHidden(Rune rune) => Rune.GetUnicodeCategory(rune) switch
    {
        UnicodeCategory.Control or UnicodeCategory.LineSeparator or UnicodeCategory.ParagraphSeparator => true,
        UnicodeCategory.Format => rune.Value is not (NonJoiner or Joiner),
        _ => false,
    };
}
