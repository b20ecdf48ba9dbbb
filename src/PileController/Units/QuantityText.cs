namespace PileController.Units;

/// <summary>Cuts a written quantity into its number and its unit.</summary>
internal static class QuantityText
{
    /// <summary>The digits at the front (empty when there are none) and the rest, both trimmed.</summary>
    public static (string Digits, string Unit) Split(string text)
    {
        // A typographic minus is what a phone keyboard or a copied table gives.
        string trimmed = text.Trim().Replace('\u2212', '-');
        int at = trimmed.Length > 0 && trimmed[0] is '-' or '+' ? 1 : 0;
        int first = at;
        while (at < trimmed.Length && (char.IsAsciiDigit(trimmed[at]) || trimmed[at] is '.' or ','))
        {
            at++;
        }

        if (at == first)
        {
            return ("", trimmed);
        }

        at += ExponentLength(trimmed.AsSpan(at));
        string unit = trimmed[at..].Trim();

        return (trimmed[..at], unit);
    }

    /// <summary>Length of "e-9" at the front; 0 where the e begins a unit instead.</summary>
    private static int ExponentLength(ReadOnlySpan<char> rest)
    {
        if (rest.Length < 2 || rest[0] is not ('e' or 'E'))
        {
            return 0;
        }

        int sign = rest[1] is '-' or '+' ? 1 : 0;
        int digits = 0;
        while (1 + sign + digits < rest.Length && char.IsAsciiDigit(rest[1 + sign + digits]))
        {
            digits++;
        }

        return digits == 0 ? 0 : 1 + sign + digits;
    }
}
