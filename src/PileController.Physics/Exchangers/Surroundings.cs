namespace PileController.Physics.Exchangers;

/// <summary>Resistances and conductances round a buried or insulated pipe, per metre of it.</summary>
public static class Surroundings
{
    private const double EulerGamma = 0.57721566490153286;

    // r²/4at below which the bed answers a pipe as it would a line.
    private const double LineSourceLeast = 0.1;

    /// <summary>Resistance of a cylindrical layer (pipe wall, insulation, a ring of bed): ln(outer/inner)/2πk, m·K/W.</summary>
    /// <param name="innerDiameterM">Inside diameter, m.</param>
    /// <param name="outerDiameterM">Outside diameter, m, at least the inside's.</param>
    /// <param name="conductivityWPerMK">Conductivity, W/(m·K).</param>
    public static double LayerMKPerW(double innerDiameterM, double outerDiameterM, double conductivityWPerMK)
    {
        Require.Positive(innerDiameterM, "m");
        Require.Within(outerDiameterM, innerDiameterM, double.MaxValue, "m");
        Require.Positive(conductivityWPerMK, "W/(m·K)");
        return Portable.Log(outerDiameterM / innerDiameterM) / (2 * Math.PI * conductivityWPerMK);
    }

    /// <summary>Resistance of a surface film: 1/(π·d·h), m·K/W.</summary>
    /// <param name="diameterM">Diameter of the surface, m.</param>
    /// <param name="filmWPerM2K">Film coefficient, W/(m²·K).</param>
    public static double FilmMKPerW(double diameterM, double filmWPerM2K)
    {
        Require.Positive(diameterM, "m");
        Require.Positive(filmWPerM2K, "W/(m²·K)");
        return 1 / (Math.PI * diameterM * filmWPerM2K);
    }

    /// <summary>Film coefficient of a surface outdoors, W/(m²·K): 5.7 + 3.8 v, McAdams after Jürges (from memory), radiation counted in.</summary>
    /// <param name="windMPerS">Wind at the surface, m/s, 0 or more.</param>
    public static double WindFilmWPerM2K(double windMPerS)
    {
        Require.NotNegative(windMPerS, "m/s");
        return 5.7 + (3.8 * windMPerS);
    }

    /// <summary>
    /// Resistance of the ground between a buried cylinder and the ground's surface, m·K/W: arcosh(2z/d)/2πk, the conduction
    /// shape factor of a pipe under an isothermal plane. Steady, so it leaves out the cold the ground itself holds back.
    /// </summary>
    /// <param name="diameterM">Outside diameter of what is buried, m, above 0.</param>
    /// <param name="depthM">Depth of its axis, m, more than half its diameter.</param>
    /// <param name="conductivityWPerMK">Of the ground, W/(m·K), above 0.</param>
    public static double BuriedMKPerW(double diameterM, double depthM, double conductivityWPerMK)
    {
        Require.Positive(diameterM, "m");
        Require.Within(depthM, diameterM / 2, double.MaxValue, "m");
        Require.Positive(conductivityWPerMK, "W/(m·K)");
        double ratio = 2 * depthM / diameterM;
        return Portable.Log(ratio + Math.Sqrt((ratio * ratio) - 1)) / (2 * Math.PI * conductivityWPerMK);
    }

    /// <summary>
    /// What a wide bed still gives a pipe after a steady draw, W/(m·K) against the bed's temperature far off:
    /// the line source, 4πk / E₁(r²/4at). Falls for ever, since the bed round the pipe cools first.
    /// </summary>
    /// <param name="radiusM">Outside radius of the pipe, m.</param>
    /// <param name="conductivityWPerMK">Of the bed, W/(m·K).</param>
    /// <param name="capacityJPerM3K">Of the bed, J/(m³·K).</param>
    /// <param name="seconds">Since the draw began, s.</param>
    public static double LineSourceWPerMK(double radiusM, double conductivityWPerMK, double capacityJPerM3K, double seconds)
    {
        double u = LineSourceArgument(radiusM, conductivityWPerMK, capacityJPerM3K, seconds);
        return 4 * Math.PI * conductivityWPerMK / ExponentialIntegral.E1(u);
    }

    /// <summary>The same by its logarithmic form, 4πk / (ln(4at/r²) − γ), true once 4at is over some 50 r².</summary>
    /// <param name="radiusM">Outside radius of the pipe, m.</param>
    /// <param name="conductivityWPerMK">Of the bed, W/(m·K).</param>
    /// <param name="capacityJPerM3K">Of the bed, J/(m³·K).</param>
    /// <param name="seconds">Since the draw began, s.</param>
    /// <exception cref="ArgumentOutOfRangeException">Too early: the form turns negative before r²/4at falls below 0.1.</exception>
    public static double LineSourceLateWPerMK(double radiusM, double conductivityWPerMK, double capacityJPerM3K, double seconds)
    {
        double lineSourceArgument = LineSourceArgument(radiusM, conductivityWPerMK, capacityJPerM3K, seconds);
        Require.Within(lineSourceArgument, 0, LineSourceLeast, "(r²/4at)");
        return 4 * Math.PI * conductivityWPerMK / (-Portable.Log(lineSourceArgument) - EulerGamma);
    }

    /// <summary>From when on the line source stands for a pipe of some width, s: r²/4at has fallen to 0.1.</summary>
    /// <param name="radiusM">Outside radius of the pipe, m.</param>
    /// <param name="conductivityWPerMK">Of the bed, W/(m·K).</param>
    /// <param name="capacityJPerM3K">Of the bed, J/(m³·K).</param>
    public static double LineSourceFromSeconds(double radiusM, double conductivityWPerMK, double capacityJPerM3K) =>
        LineSourceArgument(radiusM, conductivityWPerMK, capacityJPerM3K, 1) / LineSourceLeast;

    private static double LineSourceArgument(double radiusM, double conductivityWPerMK, double capacityJPerM3K, double seconds)
    {
        Require.Positive(radiusM, "m");
        Require.Positive(conductivityWPerMK, "W/(m·K)");
        Require.Positive(capacityJPerM3K, "J/(m³·K)");
        Require.Positive(seconds, "s");
        return radiusM * radiusM * capacityJPerM3K / (4 * conductivityWPerMK * seconds);
    }
}
