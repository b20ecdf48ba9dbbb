using System.Diagnostics.CodeAnalysis;
using System.Globalization;

namespace PileController.Commands.Calc;

/// <summary>Reads a relative humidity: "65" or "65 %".</summary>
internal static class HumidityText
{
    /// <summary>Reads it as a number of percent. Quite dry air has no dew point, hence the least.</summary>
    public static bool TryRead(string text, out double percent, [NotNullWhen(false)] out string? allowed)
    {
        bool good = double.TryParse(text.Trim().TrimEnd('%').TrimEnd(), NumberStyles.Float, CultureInfo.InvariantCulture, out percent)
            && percent is >= 0.1 and <= 100;
        allowed = good ? null : "0.1 to 100 percent";
        return good;
    }
}
