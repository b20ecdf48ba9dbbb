using System.Globalization;
using PileController.Panel.Commands;

namespace PileController.Panel.Queries;

/// <summary>Reads moments and spans from a query string.</summary>
internal static class Moments
{
    // 0001 to 9999, what a date can hold; wide enough for any record.
    private const long MostMilliseconds = 253_402_300_799_999;

    /// <summary>An instant as ISO 8601 or milliseconds since 1970, or <paramref name="absent"/> when not given.</summary>
    /// <exception cref="FieldFaultException">Neither.</exception>
    public static long Instant(string field, string? given, long absent)
    {
        if (string.IsNullOrWhiteSpace(given))
        {
            return absent;
        }

        if (long.TryParse(given, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out long milliseconds)
            && Math.Abs(milliseconds) <= MostMilliseconds)
        {
            return Math.Max(0, milliseconds);
        }

        // A plus sign in a query string arrives as a space.
        return DateTimeOffset.TryParse(given.Replace(' ', '+'), CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal, out DateTimeOffset moment)
            ? Math.Max(0, moment.ToUnixTimeMilliseconds())
            : throw BodyFields.Fault(field, given, "an ISO 8601 time such as 2026-01-28T05:00:00Z, or milliseconds since 1970");
    }

    /// <summary>A span such as "60s", "10 min", "1 h", "1 d" or plain seconds, in ms; null when not given.</summary>
    /// <exception cref="FieldFaultException">Neither, or outside 0 to 31 days.</exception>
    public static long? Span(string field, string? given)
    {
        if (string.IsNullOrWhiteSpace(given))
        {
            return null;
        }

        string text = given.Trim();
        int digits = text.TakeWhile(c => char.IsAsciiDigit(c) || c == '.').Count();
        double? unit = text[digits..].Trim() switch
        {
            "" or "s" => 1000,
            "min" or "m" => 60_000,
            "h" => 3_600_000,
            "d" => 86_400_000,
            _ => null,
        };
        bool read = double.TryParse(text[..digits], NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out double number);
        return read && number * unit is { } span and >= 0 and <= 31 * 86_400_000.0
            ? (long)span
            : throw BodyFields.Fault(field, given, "a span from 0 to 31 days such as \"60s\", \"10 min\", \"1 h\" or \"1 d\"; a plain number is seconds");
    }
}
