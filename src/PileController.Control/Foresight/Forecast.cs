using System.Globalization;

namespace PileController.Control.Foresight;

/// <summary>Weather as somebody foretells it, hour by hour. Not changed after it was made.</summary>
/// <param name="FromUtcMilliseconds">Begin of the first hour, ms since 1970-01-01T00:00Z; a whole hour.</param>
/// <param name="OutsideC">Mean air outside of each hour, °C (−60 to 60); 1 to 240 hours.</param>
/// <param name="SunWPerM2">Mean sunshine on a level surface of each hour, W/m² (0 to 1400), as many as hours; null when not told.</param>
/// <param name="Source">Where it comes from, as people call it; up to 200 characters.</param>
public sealed record Forecast(long FromUtcMilliseconds, double[] OutsideC, double[]? SunWPerM2, string Source)
{
    /// <summary>Most hours of a forecast.</summary>
    public const int MostHours = 240;

    /// <summary>How old a forecast's begin may be, days.</summary>
    public const int OldestDays = 7;

    internal const long Hour = 3_600_000;
    private const int LongestSource = 200;
    private const long FarthestAhead = 10 * 24 * Hour;

    /// <summary>Begin of the hour after the last, ms since 1970-01-01T00:00Z.</summary>
    public long EndUtcMilliseconds => FromUtcMilliseconds + (OutsideC.Length * Hour);

    /// <summary>What is wrong with it, in a sentence that names the field, what was given and what is allowed; null when it is sound.</summary>
    /// <param name="nowUtcMilliseconds">The moment at which it is taken in.</param>
    public string? Fault(long nowUtcMilliseconds)
    {
        if (OutsideC is not { Length: >= 1 and <= MostHours })
        {
            return $"outsideC has {OutsideC?.Length ?? 0} hours; allowed are 1 to {MostHours}.";
        }

        if (FromUtcMilliseconds % Hour != 0)
        {
            return $"fromUtc is {At(FromUtcMilliseconds)}; allowed is a whole hour.";
        }

        if (FromUtcMilliseconds < nowUtcMilliseconds - (OldestDays * 24 * Hour))
        {
            return $"fromUtc is {At(FromUtcMilliseconds)}; allowed is at most {OldestDays} days before now, {At(nowUtcMilliseconds)}.";
        }

        if (EndUtcMilliseconds <= nowUtcMilliseconds)
        {
            return $"outsideC ends at {At(EndUtcMilliseconds)}; allowed is an end after now, {At(nowUtcMilliseconds)}.";
        }

        if (FromUtcMilliseconds > nowUtcMilliseconds + FarthestAhead)
        {
            return $"fromUtc is {At(FromUtcMilliseconds)}; allowed is at most 10 days after now, {At(nowUtcMilliseconds)}.";
        }

        if (SunWPerM2 is { } sun && sun.Length != OutsideC.Length)
        {
            return $"sunWPerM2 has {sun.Length} hours; allowed are as many as outsideC has, {OutsideC.Length}, or none at all.";
        }

        if (Source is not { Length: <= LongestSource })
        {
            return $"source has {Source?.Length ?? 0} characters; allowed are up to {LongestSource}.";
        }

        return Outside("outsideC", OutsideC, -60, 60, "°C") ?? (SunWPerM2 is { } hours ? Outside("sunWPerM2", hours, 0, 1400, "W/m²") : null);
    }


    private static string? Outside(string name, double[] hours, double least, double most, string unit)
    {
        for (int i = 0; i < hours.Length; i++)
        {
            if (!(hours[i] >= least && hours[i] <= most))
            {
                return string.Create(CultureInfo.InvariantCulture, $"{name}[{i}] is {hours[i]}; allowed is {least} to {most} {unit}.");
            }
        }

        return null;
    }

    // A moment from outside may lie beyond what a date can say.
    private static string At(long utcMilliseconds) => Math.Abs(utcMilliseconds) < 60_000_000_000_000
        ? DateTimeOffset.FromUnixTimeMilliseconds(utcMilliseconds).ToString("yyyy-MM-dd'T'HH:mm:ss'Z'", CultureInfo.InvariantCulture)
        : string.Create(CultureInfo.InvariantCulture, $"{utcMilliseconds} ms");
}
