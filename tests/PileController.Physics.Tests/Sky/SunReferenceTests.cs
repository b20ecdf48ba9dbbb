using System.Text.RegularExpressions;
using PileController.Physics.Sky;

namespace PileController.Physics.Tests.Sky;

public partial class SunReferenceTests
{
    private static readonly IReadOnlyDictionary<string, ReferenceRow> Rows = ReferenceRow.Read("sun");

    public static TheoryData<string> PositionIds => [.. Rows.Keys.Where(id => !IsTime(Rows[id]))];

    public static TheoryData<string> TimeIds => [.. Rows.Keys.Where(id => IsTime(Rows[id]))];

    [Theory]
    [MemberData(nameof(PositionIds))]
    public void Sun_AtTheWorkedExample_StandsWherePublished(string id)
    {
        long instant = new DateTimeOffset(2003, 10, 17, 12, 30, 30, TimeSpan.FromHours(-7)).ToUnixTimeMilliseconds();
        SunPosition sun = Sun.At(39.742476, -105.1786, instant);
        ReferenceRow row = Rows[id];
        row.Check(row.Conditions.Split(':')[0] switch
        {
            "SPA zenith" => 90 - sun.ApparentElevationDegrees,
            "SPA azimuth, eastward from north" => sun.AzimuthDegrees,
            "SPA equation of time" => sun.EquationOfTimeMinutes,
            string other => throw new InvalidOperationException($"{id} is not computed: {other}."),
        });
    }

    [Theory]
    [MemberData(nameof(TimeIds))]
    public void Sun_OnPublishedDates_RisesAndSetsThen(string id)
    {
        ReferenceRow row = Rows[id];
        (double latitude, double longitude) = WhereOf(row.Conditions);
        int offset = row.Unit.EndsWith("-7", StringComparison.Ordinal) ? -7 : 0;
        SunDay day = Sun.Day(latitude, longitude, DateOnly.Parse(Iso().Match(row.Conditions).Value), TimeSpan.FromHours(offset));
        TimeOnly? computed = row.Conditions.Split(' ', ',')[0] switch
        {
            "sunrise" => day.Sunrise,
            "sunset" => day.Sunset,
            "solar" => day.SolarNoon,
            string other => throw new InvalidOperationException($"{id} is not computed: {other}."),
        };
        Assert.NotNull(computed);
        // A difference of clock times always points forward.
        double ahead = (computed.Value - TimeOnly.Parse(row.Value)).TotalSeconds;
        double away = Math.Min(ahead, 86_400 - ahead);
        Assert.True(away <= row.Tolerance, $"{id} {row.Conditions}: {computed:HH:mm:ss}, published {row.Value}, {away} s away. {row.Source}");
    }

    private static bool IsTime(ReferenceRow row) => row.Value.Contains(':', StringComparison.Ordinal);

    private static (double Latitude, double Longitude) WhereOf(string conditions) =>
        conditions.Contains("Golden", StringComparison.Ordinal) ? (39.742476, -105.1786)
        : conditions.Contains("39.0 N 105.0 W", StringComparison.Ordinal) ? (39, -105)
        : conditions.Contains("35 N", StringComparison.Ordinal) ? (35, 0)
        : (-35, 0);

    [GeneratedRegex("[0-9]{4}-[0-9]{2}-[0-9]{2}")]
    private static partial Regex Iso();
}
