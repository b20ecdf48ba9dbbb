namespace PileController.Physics.Sky;

/// <summary>
/// Where the sun stands among the stars: the low-accuracy series of Meeus, Astronomical Algorithms, chapters 25 and 28,
/// in the form NOAA's solar calculator uses them (from memory; checked against published positions). Good to 0.01°.
/// </summary>
/// <param name="DeclinationRadians">Angle of the sun north of the equator, rad.</param>
/// <param name="EquationOfTimeMinutes">Sundial time less mean time, min.</param>
/// <param name="DistanceAu">Distance of the sun, astronomical units.</param>
internal readonly record struct SolarOrbit(double DeclinationRadians, double EquationOfTimeMinutes, double DistanceAu)
{
    private const double MillisecondsPerCentury = 36525.0 * 86_400_000;

    // 2000-01-01 12:00 UTC; the minute between UTC and dynamical time moves the sun by 0.0007°.
    private const long Epoch2000 = 946_728_000_000;

    public static SolarOrbit At(double utcMilliseconds)
    {
        double t = (utcMilliseconds - Epoch2000) / MillisecondsPerCentury;
        double meanLongitude = Angle.Radians((280.46646 + (t * (36000.76983 + (t * 0.0003032)))) % 360);
        double anomaly = Angle.Radians((357.52911 + (t * (35999.05029 - (t * 0.0001537)))) % 360);
        double eccentricity = 0.016708634 - (t * (0.000042037 + (t * 0.0000001267)));
        double sinAnomaly = Portable.Sin(anomaly);
        double sinTwice = Portable.Sin(2 * anomaly);
        double centre = Angle.Radians(
            (sinAnomaly * (1.914602 - (t * (0.004817 + (t * 0.000014)))))
            + (sinTwice * (0.019993 - (t * 0.000101)))
            + (Portable.Sin(3 * anomaly) * 0.000289));
        double node = Angle.Radians((125.04 - (t * 1934.136)) % 360);
        double longitude = meanLongitude + centre + Angle.Radians(-0.00569 - (0.00478 * Portable.Sin(node)));
        double obliquity = Angle.Radians(23.4392911 - (t * 0.0130042) + (0.00256 * Portable.Cos(node)));
        double halfTan = Portable.Tan(obliquity / 2);
        double y = halfTan * halfTan;
        double equation = (y * Portable.Sin(2 * meanLongitude))
            - (2 * eccentricity * sinAnomaly)
            + (4 * eccentricity * y * sinAnomaly * Portable.Cos(2 * meanLongitude))
            - (0.5 * y * y * Portable.Sin(4 * meanLongitude))
            - (1.25 * eccentricity * eccentricity * sinTwice);
        return new SolarOrbit(
            Portable.Asin(Portable.Sin(obliquity) * Portable.Sin(longitude)),
            4 * Angle.Degrees(equation),
            1.000001018 * (1 - (eccentricity * eccentricity)) / (1 + (eccentricity * Portable.Cos(anomaly + centre))));
    }
}
