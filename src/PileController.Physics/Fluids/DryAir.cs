namespace PileController.Physics.Fluids;

/// <summary>Transport properties of dry air near one atmosphere, by Sutherland's law and its like in the US Standard Atmosphere 1976 (from memory).</summary>
public static class DryAir
{
    /// <summary>Prandtl number, near enough constant from −60 to 150 °C (from memory).</summary>
    public const double Prandtl = 0.71;

    /// <summary>Dynamic viscosity, Pa·s.</summary>
    /// <param name="temperatureC">Temperature, °C, −60 to 150.</param>
    public static double ViscosityPaS(double temperatureC)
    {
        Require.Within(temperatureC, -60, 150, "°C");
        double t = temperatureC + 273.15;
        return 1.458e-6 * t * Math.Sqrt(t) / (t + 110.4);
    }

    /// <summary>Thermal conductivity, W/(m·K), from the viscosity through the constant Prandtl number.</summary>
    /// <param name="temperatureC">Temperature, °C, −60 to 150.</param>
    public static double ConductivityWPerMK(double temperatureC) =>
        ViscosityPaS(temperatureC) * MoistAir.DryAirJPerKgK / Prandtl;
}
