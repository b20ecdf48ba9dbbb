namespace PileController.Physics.Fluids;

/// <summary>
/// Liquid water from 0 to 95 °C on its saturation line; up to 3 bar density differs from it by less than 0.02 %.
/// Least-squares fits of our own against IAPWS-IF97 and the IAPWS viscosity (2008) and conductivity (2011) formulations,
/// with the largest deviation from them beside each.
/// Every member throws <see cref="ArgumentOutOfRangeException"/> outside that range.
/// </summary>
public static class Water
{
    /// <summary>Lowest temperature the fits hold for, °C.</summary>
    public const double LowestC = 0;

    /// <summary>Highest temperature the fits hold for, °C.</summary>
    public const double HighestC = 95;

    // Specific heat, J/(kg·K), by powers of t/100 °C: one set of numbers serves both it and its integral, the enthalpy.
    private const double C0 = 4218.944763872609;
    private const double C1 = -309.8056271227459;
    private const double C2 = 969.7787749911342;
    private const double C3 = -1608.1589393005754;
    private const double C4 = 1455.322108178571;
    private const double C5 = -511.1512425895752;
    private const double EnthalpyAtZero = -40.96501351530725;

    /// <summary>Density, kg/m³ (within 0.013).</summary>
    /// <param name="temperatureC">Temperature, °C, 0 to 95.</param>
    public static double DensityKgPerM3(double temperatureC)
    {
        double x = Hundredths(temperatureC);
        return 999.806047 + (x * (6.14536793 + (x * (-83.2616887 + (x * (65.1710211 + (x * (-41.0381344 + (x * 11.5523809)))))))));
    }

    /// <summary>Specific heat at constant pressure, J/(kg·K) (within 1.5); the slope of <see cref="EnthalpyJPerKg"/>.</summary>
    /// <param name="temperatureC">Temperature, °C, 0 to 95.</param>
    public static double SpecificHeatJPerKgK(double temperatureC)
    {
        double x = Hundredths(temperatureC);
        return C0 + (x * (C1 + (x * (C2 + (x * (C3 + (x * (C4 + (x * C5)))))))));
    }

    /// <summary>Enthalpy above liquid water at the triple point, J/kg (within 16); only differences carry meaning.</summary>
    /// <param name="temperatureC">Temperature, °C, 0 to 95.</param>
    public static double EnthalpyJPerKg(double temperatureC)
    {
        double x = Hundredths(temperatureC);
        double sum = C0 + (x * ((C1 / 2) + (x * ((C2 / 3) + (x * ((C3 / 4) + (x * ((C4 / 5) + (x * (C5 / 6))))))))));
        return EnthalpyAtZero + (100 * x * sum);
    }

    /// <summary>Dynamic viscosity, Pa·s (within 0.006 %).</summary>
    /// <param name="temperatureC">Temperature, °C, 0 to 95.</param>
    public static double ViscosityPaS(double temperatureC)
    {
        // The fluidity is nearly straight in temperature, the viscosity is not.
        double x = Hundredths(temperatureC);
        double fluidity = 0.55800914 + (x * (1.947036 + (x * (1.3258089 + (x * (-0.2616069 + (x * (0.0036173372 + (x * -0.021844739)))))))));
        return 1e-3 / fluidity;
    }

    /// <summary>Thermal conductivity, W/(m·K) (within 0.05 %).</summary>
    /// <param name="temperatureC">Temperature, °C, 0 to 95.</param>
    public static double ConductivityWPerMK(double temperatureC)
    {
        double x = Hundredths(temperatureC);
        return 0.5558113 + (x * (0.247573 + (x * (-0.2077557 + (x * (0.1251774 + (x * -0.04386661)))))));
    }

    /// <summary>Prandtl number, the ratio of the spread of momentum to that of heat.</summary>
    /// <param name="temperatureC">Temperature, °C, 0 to 95.</param>
    public static double Prandtl(double temperatureC) =>
        SpecificHeatJPerKgK(temperatureC) * ViscosityPaS(temperatureC) / ConductivityWPerMK(temperatureC);

    /// <summary>Mass flow of a metered volume flow, kg/s.</summary>
    /// <param name="flowLitresPerMinute">Volume flow, L/min, either direction.</param>
    /// <param name="meterC">Water temperature at the flow meter, °C, 0 to 95.</param>
    public static double MassFlowKgPerS(double flowLitresPerMinute, double meterC) =>
        DensityKgPerM3(meterC) * flowLitresPerMinute / 60_000;

    /// <summary>
    /// Heat a water circuit carries, W, as a heat meter reckons it: metered volume × density at the meter × enthalpy difference.
    /// Positive when the supply is the warmer.
    /// </summary>
    /// <param name="flowLitresPerMinute">Volume flow, L/min.</param>
    /// <param name="meterC">Water temperature at the flow meter, °C, 0 to 95.</param>
    /// <param name="supplyC">Water coming from the heap, °C, 0 to 95.</param>
    /// <param name="returnC">Water going back to it, °C, 0 to 95.</param>
    public static double DrawWatts(double flowLitresPerMinute, double meterC, double supplyC, double returnC) =>
        MassFlowKgPerS(flowLitresPerMinute, meterC) * (EnthalpyJPerKg(supplyC) - EnthalpyJPerKg(returnC));

    private static double Hundredths(double temperatureC)
    {
        Require.Within(temperatureC, LowestC, HighestC, "°C");
        return temperatureC * 0.01;
    }
}
