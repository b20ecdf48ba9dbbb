namespace PileController.Physics.Sky;

/// <summary>
/// Position, rise and set of the sun. Rise and set within a minute of the best tables below the polar circles; what mountains,
/// cold or refraction on the day do is not in it.
/// </summary>
public static class Sun
{
    // Half the sun's breadth and average refraction at the horizon: the centre stands at −0.833° (NOAA's convention, from memory).
    private const double HorizonDegrees = -0.833;
    private const double MillisecondsPerMinute = 60_000;
    private const double MinutesPerDay = 1440;

    /// <summary>Where the sun stands.</summary>
    /// <param name="latitudeDegrees">Degrees north, −90 to 90.</param>
    /// <param name="longitudeDegrees">Degrees east, −180 to 180.</param>
    /// <param name="utcMilliseconds">Instant, ms since 1970-01-01 UTC.</param>
    public static SunPosition At(double latitudeDegrees, double longitudeDegrees, long utcMilliseconds)
    {
        Require.Within(latitudeDegrees, -90, 90, "degrees");
        Require.Within(longitudeDegrees, -180, 180, "degrees");
        SolarOrbit orbit = SolarOrbit.At(utcMilliseconds);
        double hour = HourAngle(orbit, longitudeDegrees, utcMilliseconds);
        double latitude = Angle.Radians(latitudeDegrees);
        double sinLatitude = Portable.Sin(latitude);
        double cosLatitude = Portable.Cos(latitude);
        double sinDeclination = Portable.Sin(orbit.DeclinationRadians);
        double cosDeclination = Portable.Cos(orbit.DeclinationRadians);
        double cosHour = Portable.Cos(hour);
        double up = (sinLatitude * sinDeclination) + (cosLatitude * cosDeclination * cosHour);
        double east = -cosDeclination * Portable.Sin(hour);
        double north = (cosLatitude * sinDeclination) - (sinLatitude * cosDeclination * cosHour);
        double elevation = Angle.Degrees(Portable.Asin(Math.Clamp(up, -1, 1)));
        double azimuth = Angle.Degrees(Portable.Atan2(east, north));
        return new SunPosition(
            elevation, elevation + Refraction.Degrees(elevation), azimuth < 0 ? azimuth + 360 : azimuth, orbit.EquationOfTimeMinutes, orbit.DistanceAu);
    }

    /// <summary>Sunrise, solar noon and sunset of a date.</summary>
    /// <param name="latitudeDegrees">Degrees north, −90 to 90.</param>
    /// <param name="longitudeDegrees">Degrees east, −180 to 180.</param>
    /// <param name="date">Local date.</param>
    /// <param name="utcOffset">Local standard time less UTC.</param>
    public static SunDay Day(double latitudeDegrees, double longitudeDegrees, DateOnly date, TimeSpan utcOffset)
    {
        Require.Within(latitudeDegrees, -90, 90, "degrees");
        Require.Within(longitudeDegrees, -180, 180, "degrees");
        Require.Within(utcOffset.TotalHours, -14, 14, "h");
        double midnight = UtcMilliseconds(date) - utcOffset.TotalMilliseconds;
        double noon = SolarNoonMinutes(midnight, longitudeDegrees);
        double? rise = Crossing(midnight, noon, -1, latitudeDegrees, longitudeDegrees);
        double? set = Crossing(midnight, noon, 1, latitudeDegrees, longitudeDegrees);
        double elevation = At(latitudeDegrees, longitudeDegrees, (long)(midnight + (noon * MillisecondsPerMinute))).ElevationDegrees;
        return new SunDay(Clock(rise), Clock(noon)!.Value, Clock(set), elevation);
    }

    /// <summary>First instant of a date were it a UTC date, ms since 1970-01-01.</summary>
    internal static long UtcMilliseconds(DateOnly date) =>
        (date.DayNumber - new DateOnly(1970, 1, 1).DayNumber) * 86_400_000L;

    private static double HourAngle(SolarOrbit orbit, double longitudeDegrees, double utcMilliseconds)
    {
        double minutes = (utcMilliseconds / MillisecondsPerMinute % MinutesPerDay) + orbit.EquationOfTimeMinutes + (4 * longitudeDegrees);
        return Angle.Radians((minutes / 4) - 180);
    }

    // Minutes after local midnight; the equation of time moves by less than half a minute a day, so two passes settle it.
    private static double SolarNoonMinutes(double midnight, double longitudeDegrees)
    {
        double noon = MinutesPerDay / 2;
        for (int pass = 0; pass < 3; pass++)
        {
            double instant = midnight + (noon * MillisecondsPerMinute);
            double away = Angle.Degrees(HourAngle(SolarOrbit.At(instant), longitudeDegrees, instant)) * 4;
            noon -= away - (MinutesPerDay * Math.Round(away / MinutesPerDay));
        }

        return noon < 0 ? noon + MinutesPerDay : noon >= MinutesPerDay ? noon - MinutesPerDay : noon;
    }

    // The declination is taken anew at the crossing itself: over half a day it moves enough to shift it by half a minute.
    private static double? Crossing(double midnight, double noon, int side, double latitudeDegrees, double longitudeDegrees)
    {
        double latitude = Angle.Radians(latitudeDegrees);
        double minutes = noon;
        for (int pass = 0; pass < 5; pass++)
        {
            double instant = midnight + (minutes * MillisecondsPerMinute);
            SolarOrbit orbit = SolarOrbit.At(instant);
            double cosHour = (Portable.Sin(Angle.Radians(HorizonDegrees)) - (Portable.Sin(latitude) * Portable.Sin(orbit.DeclinationRadians)))
                / (Portable.Cos(latitude) * Portable.Cos(orbit.DeclinationRadians));
            if (!(Math.Abs(cosHour) <= 1))
            {
                return null;
            }

            double wanted = side * Angle.Degrees(Portable.Acos(cosHour)) * 4;
            double away = wanted - (Angle.Degrees(HourAngle(orbit, longitudeDegrees, instant)) * 4);
            minutes += away - (MinutesPerDay * Math.Round(away / MinutesPerDay));
        }

        return minutes;
    }

    private static TimeOnly? Clock(double? minutes) =>
        minutes is { } value ? TimeOnly.MinValue.Add(TimeSpan.FromSeconds(Math.Round(value * 60))) : null;
}
