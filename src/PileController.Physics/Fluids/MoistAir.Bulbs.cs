namespace PileController.Physics.Fluids;

public static partial class MoistAir
{
    private const double BulbToleranceC = 1e-7;

    /// <summary>Temperature at which air of this vapour pressure becomes saturated (frost point below 0.01 °C), °C, −100 at the lowest.</summary>
    /// <param name="vapourPressurePa">Partial pressure of the vapour, Pa, 0 to 1.5 MPa.</param>
    public static double DewPointC(double vapourPressurePa)
    {
        Require.Within(vapourPressurePa, 0, 1.5e6, "Pa");
        if (vapourPressurePa <= SaturationPressurePa(-100))
        {
            return -100;
        }

        double log = Portable.Log(vapourPressurePa);
        return Bracket.Solve(t => LogSaturationPressure(t) - log, -100, 200, BulbToleranceC);
    }

    /// <summary>Thermodynamic wet bulb, °C.</summary>
    /// <param name="temperatureC">Dry bulb, °C, −100 to the boiling point.</param>
    /// <param name="relativeHumidity">Fraction, 0 to 1.</param>
    /// <param name="pressurePa">Pressure, Pa, above the vapour's.</param>
    public static double WetBulbC(double temperatureC, double relativeHumidity, double pressurePa = StandardPressurePa)
    {
        double ratio = HumidityRatioFromRelative(temperatureC, relativeHumidity, pressurePa);
        double lowest = Math.Min(DewPointC(VapourPressurePa(ratio, pressurePa)), temperatureC);
        return Bracket.Solve(wet => HumidityRatioFromWetBulb(temperatureC, wet, pressurePa) - ratio, lowest, temperatureC, BulbToleranceC);
    }

    /// <summary>Humidity ratio from dry and wet bulb; below 0 when the two cannot belong together.</summary>
    /// <param name="temperatureC">Dry bulb, °C.</param>
    /// <param name="wetBulbC">Wet bulb, °C, at most the dry bulb (iced below 0 °C).</param>
    /// <param name="pressurePa">Pressure, Pa, above the vapour's.</param>
    public static double HumidityRatioFromWetBulb(double temperatureC, double wetBulbC, double pressurePa = StandardPressurePa)
    {
        Require.Within(wetBulbC, -100, temperatureC, "°C");
        double saturated = SaturatedHumidityRatio(wetBulbC, pressurePa);
        return wetBulbC >= 0
            ? (((2501 - (2.326 * wetBulbC)) * saturated) - (1.006 * (temperatureC - wetBulbC))) / (2501 + (1.86 * temperatureC) - (4.186 * wetBulbC))
            : (((2830 - (0.24 * wetBulbC)) * saturated) - (1.006 * (temperatureC - wetBulbC))) / (2830 + (1.86 * temperatureC) - (2.1 * wetBulbC));
    }

    /// <summary>Everything about air of a temperature and humidity at once.</summary>
    /// <param name="temperatureC">Dry bulb, °C, −100 to the boiling point.</param>
    /// <param name="relativeHumidity">Fraction, 0 to 1.</param>
    /// <param name="pressurePa">Pressure, Pa, above the vapour's.</param>
    public static AirState State(double temperatureC, double relativeHumidity, double pressurePa = StandardPressurePa)
    {
        double ratio = HumidityRatioFromRelative(temperatureC, relativeHumidity, pressurePa);
        return new AirState(
            SaturationPressurePa(temperatureC),
            ratio,
            EnthalpyJPerKg(temperatureC, ratio),
            SpecificVolumeM3PerKg(temperatureC, ratio, pressurePa),
            DewPointC(VapourPressurePa(ratio, pressurePa)),
            WetBulbC(temperatureC, relativeHumidity, pressurePa));
    }
}
