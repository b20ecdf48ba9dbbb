namespace PileController.Physics.Heaps;

/// <summary>
/// What chips are made of and what burning them takes and gives. Heat per kilogram of solids and per kilogram of
/// oxygen come from one reaction, that of cellulose: C₆H₁₀O₅ + 6 O₂ → 6 CO₂ + 5 H₂O.
/// </summary>
public static class Stuff
{
    /// <summary>Oxygen taken per kilogram of solids burnt, kg/kg: 192/162.</summary>
    public const double OxygenPerSolids = 192.0 / 162.0;

    /// <summary>Water made per kilogram of solids burnt, kg/kg: 90/162.</summary>
    public const double WaterPerSolids = 90.0 / 162.0;

    /// <summary>Carbon dioxide made per kilogram of solids burnt, kg/kg: what is left of the mass.</summary>
    public const double CarbonDioxidePerSolids = 1 + OxygenPerSolids - WaterPerSolids;

    /// <summary>
    /// Heat per kilogram of solids burnt, J/kg (17.0 MJ/kg: the low end of 17 to 20 MJ/kg for cellulosic matter, from
    /// memory), which is 14.3 MJ per kilogram of oxygen, inside 13.6 to 14.6 MJ/kg (from memory).
    /// </summary>
    public const double HeatPerSolids = 17.0e6;

    /// <summary>Mass share of oxygen in dry air.</summary>
    public const double OxygenInAir = 0.2314;

    /// <summary>Specific heat of dry wood, J/(kg·K), near 40 °C (from memory).</summary>
    public const double SolidsJPerKgK = 1400;

    /// <summary>Specific heat of water, J/(kg·K), a constant in the heap's store so that its enthalpy is exact.</summary>
    public const double WaterJPerKgK = 4186;

    /// <summary>Specific heat of dry gas, J/(kg·K) (ASHRAE, dry air).</summary>
    public const double GasJPerKgK = 1006;

    /// <summary>Enthalpy of vapour at 0 °C, J/kg (ASHRAE).</summary>
    public const double VapourJPerKg = 2_501_000;

    /// <summary>Specific heat of vapour, J/(kg·K) (ASHRAE).</summary>
    public const double VapourJPerKgK = 1860;

    /// <summary>True density of wood substance, kg/m³ (from memory: 1500).</summary>
    public const double SolidsKgPerM3 = 1500;

    /// <summary>
    /// Conductivity of the bed, W/(m·K): solids and water films, and vapour that carries latent heat from warm to
    /// cold through the pores (a term that grows with the slope of the saturation curve). The result lies in the
    /// published range 0.12 to 0.81 W/(m·K) for such blends (Ahn, Sauer, Richard, Glanville 2009).
    /// </summary>
    /// <param name="waterKgPerM3">Water in the bed, kg/m³.</param>
    /// <param name="gasShare">Share of the volume that is gas.</param>
    /// <param name="celsius">Temperature, °C.</param>
    /// <param name="saturationPa">Saturation pressure at that temperature, Pa.</param>
    public static double ConductivityWPerMK(double waterKgPerM3, double gasShare, double celsius, double saturationPa)
    {
        const double pressurePa = 101_325;
        const double vapourGasConstant = 461.5;
        double kelvin = celsius + 273.15;
        double latent = VapourJPerKg - (2360 * celsius);
        double slope = saturationPa * latent / (vapourGasConstant * kelvin * kelvin);
        // Diffusivity of vapour in air grows with T^1.81; 2.2e-5 m²/s at 0 °C (from memory).
        double diffusivity = 2.2e-5 * (1 + (0.0068 * celsius));
        double open = gasShare * 0.66;
        double vapour = latent * diffusivity * open * slope / (vapourGasConstant * kelvin)
            * pressurePa / (pressurePa - saturationPa);
        return 0.11 + (0.5e-3 * waterKgPerM3) + vapour;
    }
}
