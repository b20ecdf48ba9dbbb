using CsCheck;
using PileController.Physics.Sky;

namespace PileController.Physics.Tests.Sky;

public class SunTests
{
    private static readonly Gen<DateOnly> Dates = Gen.Int[0, 365 * 40].Select(n => new DateOnly(2000, 1, 1).AddDays(n));

    [Fact]
    public void Day_AnywhereBelowThePolarCircles_HasTheSunOnTheHorizonAtRiseAndSet() =>
        Gen.Select(Gen.Double[-60, 60], Gen.Double[-180, 180], Dates).Sample((latitude, longitude, date) =>
        {
            TimeSpan offset = TimeSpan.FromHours(Math.Round(longitude / 15));
            SunDay day = Sun.Day(latitude, longitude, date, offset);
            return Math.Abs(Height(latitude, longitude, date, offset, day.Sunrise!.Value) + 0.833) < 0.01
                && Math.Abs(Height(latitude, longitude, date, offset, day.Sunset!.Value) + 0.833) < 0.01
                && day.Sunrise < day.SolarNoon && day.SolarNoon < day.Sunset;
        });

    [Fact]
    public void SolarNoon_OfAnyDay_IsWhenTheSunStandsDueNorthOrSouth() =>
        Gen.Select(Gen.Double[-60, 60], Gen.Double[-180, 180], Dates).Where((latitude, _, _) => Math.Abs(latitude) > 30).Sample((latitude, longitude, date) =>
        {
            TimeSpan offset = TimeSpan.FromHours(Math.Round(longitude / 15));
            SunDay day = Sun.Day(latitude, longitude, date, offset);
            double azimuth = Sun.At(latitude, longitude, Instant(date, offset, day.SolarNoon)).AzimuthDegrees;
            double away = latitude > 0 ? Math.Abs(azimuth - 180) : Math.Min(azimuth, 360 - azimuth);
            return away < 0.05;
        });

    [Theory]
    [InlineData(6, 21, true)]
    [InlineData(12, 21, false)]
    public void Day_BeyondThePolarCircle_NeitherRisesNorSets(int month, int dayOfMonth, bool up)
    {
        SunDay day = Sun.Day(78, 15, new DateOnly(2024, month, dayOfMonth), TimeSpan.FromHours(1));
        Assert.Null(day.Sunrise);
        Assert.Null(day.Sunset);
        Assert.Equal(up, day.NoonElevationDegrees > 0);
    }

    [Fact]
    public void Day_WithAClockFarFromTheSun_KeepsItsNoonOnTheDate()
    {
        SunDay honest = Sun.Day(40, 170, new DateOnly(2024, 3, 1), TimeSpan.FromHours(11));
        SunDay shifted = Sun.Day(40, 170, new DateOnly(2024, 3, 1), TimeSpan.FromHours(-1));
        Assert.InRange(Math.Abs((honest.SolarNoon.AddHours(-12) - shifted.SolarNoon).TotalSeconds), 0, 30);
    }

    [Fact]
    public void NoonElevation_AtTheEquinox_IsNinetyDegreesLessLatitude() =>
        Assert.Equal(50, Sun.Day(40, 0, new DateOnly(2024, 3, 20), TimeSpan.Zero).NoonElevationDegrees, 0.25);

    [Fact]
    public void OutsideAir_SummedOverADay_AgreesWithThePublishedExample()
    {
        // FAO paper 56, example 8: 3 September at 20° south, 32.2 MJ/m² (from memory); its declination is a single sine, up to 1° off.
        long midnight = new DateTimeOffset(2023, 9, 3, 0, 0, 0, TimeSpan.Zero).ToUnixTimeMilliseconds();
        double sum = Enumerable.Range(0, 288).Sum(i => 300 * Sunshine.OutsideAirWPerM2(Sun.At(-20, 0, midnight + (i * 300_000L))));
        Assert.Equal(32.2e6, sum, 0.02 * 32.2e6);
    }

    [Fact]
    public void ShareFromSpan_OfThePublishedExample_GivesItsTotal() =>
        // FAO paper 56, example 15: outside the air 40.6 MJ/m², 26.6 and 14.8 °C inland give 22.3 MJ/m² (from memory).
        Assert.Equal(22.3, 40.6 * Sunshine.ShareFromSpan(26.6 - 14.8, 200, Sunshine.InlandCoefficient), 0.05);

    [Fact]
    public void ShareFromSpan_OfAVeryWideSpan_IsThatOfAClearSky() => Assert.Equal(0.76, Sunshine.ShareFromSpan(40, 500, 0.16), 1e-12);

    [Fact]
    public void ClearSky_AtAnyHeight_LiesBelowTheSunOutsideTheAir() =>
        Gen.Double[-30, 90].Sample(elevation =>
        {
            var sun = new SunPosition(elevation, elevation, 180, 0, 1);
            double clear = Sunshine.ClearSkyWPerM2(sun);
            return elevation <= 0 ? clear == 0 : clear < Sunshine.OutsideAirWPerM2(sun);
        });

    [Fact]
    public void Latitude_BeyondThePole_IsRefusedByName()
    {
        var error = Assert.Throws<ArgumentOutOfRangeException>(() => Sun.Day(91, 0, new DateOnly(2024, 1, 1), TimeSpan.Zero));
        Assert.Contains("latitudeDegrees must lie from -90 to 90", error.Message);
    }

    private static long Instant(DateOnly date, TimeSpan offset, TimeOnly clock) =>
        new DateTimeOffset(date.ToDateTime(clock), offset).ToUnixTimeMilliseconds();

    private static double Height(double latitude, double longitude, DateOnly date, TimeSpan offset, TimeOnly clock) =>
        Sun.At(latitude, longitude, Instant(date, offset, clock)).ElevationDegrees;
}
