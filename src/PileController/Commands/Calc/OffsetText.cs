using System.Diagnostics.CodeAnalysis;
using System.Globalization;

namespace PileController.Commands.Calc;

/// <summary>Reads an offset from UTC: hours ("-7", "5.75") or a clock ("+05:45").</summary>
internal static class OffsetText
{
    /// <summary>Reads it, to the minute.</summary>
    public static bool TryRead(string text, out TimeSpan offset, [NotNullWhen(false)] out string? allowed)
    {
        double hours = double.NaN;
        if (text.Contains(':', StringComparison.Ordinal))
        {
            if (TimeSpan.TryParseExact(text.TrimStart('+', '-'), "hh\\:mm", CultureInfo.InvariantCulture, out TimeSpan clock))
            {
                hours = text.StartsWith('-') ? -clock.TotalHours : clock.TotalHours;
            }
        }
        else if (double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out double number))
        {
            hours = number;
        }

        bool good = hours is >= -14 and <= 14;
        offset = good ? TimeSpan.FromMinutes(Math.Round(60 * hours)) : TimeSpan.Zero;
        allowed = good ? null : "-14 to 14 hours, written -7, 5.75 or +05:45";
        return good;
    }
}
