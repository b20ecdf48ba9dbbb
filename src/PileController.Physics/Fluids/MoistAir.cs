namespace PileController.Physics.Fluids;

/// <summary>
/// Moist air as an ideal mixture, by the formulae of ASHRAE Handbook Fundamentals 2017, chapter 1; per kg of dry air.
/// Humidity ratio is kg of vapour per kg of dry air; relative humidity a fraction, 0 to 1.
/// </summary>
public static partial class MoistAir
{
    /// <summary>Sea-level pressure of the standard atmosphere, Pa.</summary>
    public const double StandardPressurePa = 101_325;

    /// <summary>Specific heat of dry air, J/(kg·K).</summary>
    public const double DryAirJPerKgK = 1006;

    /// <summary>Heat of evaporation of water at 0 °C, J/kg.</summary>
    public const double EvaporationJPerKg = 2_501_000;

    /// <summary>Specific heat of water vapour, J/(kg·K).</summary>
    public const double VapourJPerKgK = 1860;

    private const double DryAirGasConstant = 287.042;
    private const double MassRatio = 0.621945;
    private const double VolumeRatio = 1.607858;

    /// <summary>Humidity ratio of air holding vapour at a partial pressure.</summary>
    /// <param name="vapourPressurePa">Partial pressure of the vapour, Pa, 0 to below the whole pressure.</param>
    /// <param name="pressurePa">Pressure of the air, Pa.</param>
    /// <exception cref="ArgumentOutOfRangeException">The vapour pressure reaches the whole pressure (water would boil).</exception>
    public static double HumidityRatio(double vapourPressurePa, double pressurePa)
    {
        Require.Positive(pressurePa, "Pa");
        Require.Within(vapourPressurePa, 0, 0.9999 * pressurePa, "Pa");
        return MassRatio * vapourPressurePa / (pressurePa - vapourPressurePa);
    }

    /// <summary>Humidity ratio from relative humidity.</summary>
    /// <param name="temperatureC">Dry bulb, °C, −100 to 200.</param>
    /// <param name="relativeHumidity">Fraction, 0 to 1.</param>
    /// <param name="pressurePa">Pressure, Pa, above the vapour's.</param>
    public static double HumidityRatioFromRelative(double temperatureC, double relativeHumidity, double pressurePa = StandardPressurePa)
    {
        Require.Within(relativeHumidity, 0, 1, "(fraction)");
        return HumidityRatio(relativeHumidity * SaturationPressurePa(temperatureC), pressurePa);
    }

    /// <summary>Humidity ratio of saturated air.</summary>
    /// <param name="temperatureC">Temperature, °C, −100 to the boiling point.</param>
    /// <param name="pressurePa">Pressure, Pa, above the vapour's.</param>
    public static double SaturatedHumidityRatio(double temperatureC, double pressurePa = StandardPressurePa) =>
        HumidityRatio(SaturationPressurePa(temperatureC), pressurePa);

    /// <summary>Partial pressure of the vapour in air of a humidity ratio, Pa.</summary>
    /// <param name="humidityRatio">kg/kg, 0 or more.</param>
    /// <param name="pressurePa">Pressure, Pa.</param>
    public static double VapourPressurePa(double humidityRatio, double pressurePa = StandardPressurePa)
    {
        Require.NotNegative(humidityRatio, "kg/kg");
        Require.Positive(pressurePa, "Pa");
        return pressurePa * humidityRatio / (MassRatio + humidityRatio);
    }

    /// <summary>Enthalpy, J per kg of dry air, above dry air and liquid water at 0 °C.</summary>
    /// <param name="temperatureC">Dry bulb, °C.</param>
    /// <param name="humidityRatio">kg/kg, 0 or more.</param>
    public static double EnthalpyJPerKg(double temperatureC, double humidityRatio) =>
        (DryAirJPerKgK * temperatureC) + (humidityRatio * (EvaporationJPerKg + (VapourJPerKgK * temperatureC)));

    /// <summary>Enthalpy of saturated air, J per kg of dry air.</summary>
    /// <param name="temperatureC">Temperature, °C, −100 to the boiling point.</param>
    /// <param name="pressurePa">Pressure, Pa, above the vapour's.</param>
    public static double SaturatedEnthalpyJPerKg(double temperatureC, double pressurePa = StandardPressurePa) =>
        EnthalpyJPerKg(temperatureC, SaturatedHumidityRatio(temperatureC, pressurePa));

    /// <summary>Volume that holds 1 kg of dry air and its vapour, m³/kg.</summary>
    /// <param name="temperatureC">Dry bulb, °C, above −273.15.</param>
    /// <param name="humidityRatio">kg/kg, 0 or more.</param>
    /// <param name="pressurePa">Pressure, Pa.</param>
    public static double SpecificVolumeM3PerKg(double temperatureC, double humidityRatio, double pressurePa = StandardPressurePa)
    {
        Require.Positive(pressurePa, "Pa");
        return DryAirGasConstant * (temperatureC + 273.15) * (1 + (VolumeRatio * humidityRatio)) / pressurePa;
    }

    /// <summary>Density of the mixture, vapour included, kg/m³.</summary>
    /// <param name="temperatureC">Dry bulb, °C, above −273.15.</param>
    /// <param name="humidityRatio">kg/kg, 0 or more.</param>
    /// <param name="pressurePa">Pressure, Pa.</param>
    public static double DensityKgPerM3(double temperatureC, double humidityRatio, double pressurePa = StandardPressurePa) =>
        (1 + humidityRatio) / SpecificVolumeM3PerKg(temperatureC, humidityRatio, pressurePa);

    /// <summary>Pressure of the standard atmosphere at an altitude, Pa.</summary>
    /// <param name="altitudeM">Height above the sea, m, −500 to 11 000.</param>
    public static double PressureAtAltitudePa(double altitudeM)
    {
        Require.Within(altitudeM, -500, 11_000, "m");
        return StandardPressurePa * Portable.Pow(1 - (2.25577e-5 * altitudeM), 5.2559);
    }
}
