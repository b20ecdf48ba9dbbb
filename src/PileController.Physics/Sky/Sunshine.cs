namespace PileController.Physics.Sky;

/// <summary>Sun's power on level ground.</summary>
public static class Sunshine
{
    /// <summary>Solar constant, W/m² (FAO Irrigation and Drainage Paper 56, chapter 3: 0.0820 MJ/(m²·min)).</summary>
    public const double SolarConstantWPerM2 = 0.0820e6 / 60;

    /// <summary>Hargreaves' coefficient inland, K^−½ (FAO paper 56, equation 50).</summary>
    public const double InlandCoefficient = 0.16;

    /// <summary>Hargreaves' coefficient near a coast, K^−½ (FAO paper 56, equation 50).</summary>
    public const double CoastalCoefficient = 0.19;

    /// <summary>On level ground outside the air, W/m²; 0 when the sun is down.</summary>
    /// <param name="sun">Position of the sun.</param>
    public static double OutsideAirWPerM2(SunPosition sun) =>
        Math.Max(0, SolarConstantWPerM2 * Portable.Sin(Angle.Radians(sun.ElevationDegrees)) / (sun.DistanceAu * sun.DistanceAu));

    /// <summary>Under a clear sky, W/m², by Haurwitz's formula, 1098·sin h·exp(−0.059/sin h) (from memory).</summary>
    /// <param name="sun">Position of the sun.</param>
    public static double ClearSkyWPerM2(SunPosition sun)
    {
        double height = Portable.Sin(Angle.Radians(sun.ElevationDegrees));
        return height <= 0 ? 0 : 1098 * height * Portable.Exp(-0.059 / height);
    }

    /// <summary>
    /// Share of the sun outside the air that reached the ground over a day, estimated from the day's span of temperature after
    /// Hargreaves and Samani (FAO paper 56, equation 50), at most that of a clear sky (equation 37).
    /// </summary>
    /// <param name="spanK">Highest less lowest temperature of the day, K, 0 or more.</param>
    /// <param name="altitudeM">Height above the sea, m.</param>
    /// <param name="coefficient">Hargreaves' coefficient, K^−½, 0.1 to 0.25.</param>
    public static double ShareFromSpan(double spanK, double altitudeM, double coefficient)
    {
        Require.NotNegative(spanK, "K");
        Require.Within(coefficient, 0.1, 0.25, "K^-½");
        return Math.Min(coefficient * Math.Sqrt(spanK), 0.75 + (2e-5 * altitudeM));
    }
}
