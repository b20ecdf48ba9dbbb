using System.CommandLine;
using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using PileController.Commands.Shell;
using PileController.Physics.Sky;

namespace PileController.Commands.Calc;

/// <summary>calc sun: rise, noon and set of a date.</summary>
internal static class CalcSun
{
    private static readonly Option<double> Latitude = Ask.Number("--latitude", "Latitude.", -90, 90, "degrees north").Needed();

    private static readonly Option<double> Longitude = Ask.Number("--longitude", "Longitude.", -180, 180, "degrees east").Needed();

    private static readonly Option<DateOnly> Date = Ask.Of<DateOnly>("--date", "Local date, 2003-10-17.", TryReadDate).Needed();

    private static readonly Option<TimeSpan> Offset = Ask.Of<TimeSpan>(
        "--utc-offset", "Local time less UTC, hours: -7, 5.75 or +05:45; 0 unless given.", OffsetText.TryRead).Unless(TimeSpan.Zero);

    private static readonly Option<bool> Json = Ask.Json();

    public static Command Create()
    {
        PileCommand command = new(
            "sun", "Sunrise, solar noon and sunset, in local time.",
            "PileController calc sun --latitude 39.74 --longitude -105.18 --date 2003-10-17 --utc-offset -7")
        {
            Latitude, Longitude, Date, Offset, Json,
        };
        command.SetAction(Run);
        return command;
    }

    private static int Run(ParseResult parse)
    {
        SunDay day = Sun.Day(
            parse.GetRequiredValue(Latitude), parse.GetRequiredValue(Longitude), parse.GetRequiredValue(Date), parse.GetValue(Offset));
        if (parse.GetValue(Json))
        {
            Answer.WriteJson(parse, new
            {
                Sunrise = Clock(day.Sunrise),
                SolarNoon = Clock(day.SolarNoon),
                Sunset = Clock(day.Sunset),
                day.NoonElevationDegrees,
            });
            return ExitCodes.Done;
        }

        string never = day.NoonElevationDegrees > 0 ? "none: the sun does not set" : "none: the sun does not rise";
        Answer.WriteRows(
            parse,
            ("sunrise", Clock(day.Sunrise) ?? never),
            ("solar noon", Clock(day.SolarNoon)!),
            ("sunset", Clock(day.Sunset) ?? never),
            ("height at noon", $"{day.NoonElevationDegrees:F2}°"));
        return ExitCodes.Done;
    }

    private static string? Clock(TimeOnly? time) => time?.ToString("HH:mm:ss", CultureInfo.InvariantCulture);

    private static bool TryReadDate(string text, out DateOnly date, [NotNullWhen(false)] out string? allowed)
    {
        bool good = DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out date)
            && date.Year is >= 1900 and <= 2100;
        allowed = good ? null : "a date from 1900-01-01 to 2100-12-31, written year-month-day";
        return good;
    }
}
