using System.Globalization;

namespace PileController.Settings;

/// <summary>Where the holding is.</summary>
public sealed record Site
{
    /// <summary>Name shown on the page, 1 to 60 letters.</summary>
    public string Name { get; init; } = "Alder Bank";

    /// <summary>Latitude, degrees north (-90 to 90).</summary>
    public double LatitudeDegrees { get; init; } = 45;

    /// <summary>Longitude, degrees east (-180 to 180).</summary>
    public double LongitudeDegrees { get; init; }

    /// <summary>A fixed offset from UTC, "+05:30", or the name of a zone in the system's time-zone data.</summary>
    public string TimeZone { get; init; } = "+00:00";

    /// <summary>The zone's name in the system's time-zone data, or null for a fixed offset.</summary>
    internal string? Zone => TryFixedOffset(TimeZone, out _) ? null : TimeZone;

    /// <summary>Local time minus UTC at a moment, minutes.</summary>
    /// <param name="utcMilliseconds">Milliseconds since 1970-01-01T00:00:00Z.</param>
    /// <exception cref="TimeZoneNotFoundException">The zone is not in the system's data; a checked file has none such.</exception>
    public int OffsetMinutesAt(long utcMilliseconds) =>
        TryFixedOffset(TimeZone, out int minutes)
            ? minutes
            : (int)TimeZoneInfo.FindSystemTimeZoneById(TimeZone)
                .GetUtcOffset(DateTimeOffset.FromUnixTimeMilliseconds(utcMilliseconds)).TotalMinutes;

    /// <summary>Whether a text is a fixed offset or a zone this system knows.</summary>
    internal static bool KnowsTimeZone(string text) =>
        TryFixedOffset(text, out _) || TimeZoneInfo.TryFindSystemTimeZoneById(text, out _);

    private static bool TryFixedOffset(string text, out int minutes)
    {
        minutes = 0;
        if (text.Length != 6 || text[0] is not ('+' or '-')
            || !TimeSpan.TryParseExact(text[1..], "hh\\:mm", CultureInfo.InvariantCulture, out TimeSpan span)
            || span > TimeSpan.FromHours(14))
        {
            return false;
        }

        minutes = (int)span.TotalMinutes * (text[0] == '-' ? -1 : 1);
        return true;
    }
}
