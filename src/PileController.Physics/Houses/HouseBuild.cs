namespace PileController.Physics.Houses;

/// <summary>A greenhouse as it is built. Defaults are Alder Bank's.</summary>
public sealed record HouseBuild
{
    /// <summary>Glazed surface, m² (2 to 2000).</summary>
    public double GlazingAreaM2 { get; init; } = 62;

    /// <summary>Heat transmittance of the glazing, W/(m²·K) (0.5 to 8).</summary>
    public double GlazingUWPerM2K { get; init; } = 3.3;

    /// <summary>Floor, m² (1 to 1000).</summary>
    public double FloorAreaM2 { get; init; } = 30;

    /// <summary>Air volume, m³ (2 to 5000).</summary>
    public double VolumeM3 { get; init; } = 70;

    /// <summary>Air changes by leaks, 1/h (0 to 10).</summary>
    public double AirChangesPerHour { get; init; } = 0.75;

    /// <summary>Share of the sun on the floor area that stays as heat, 0 to 0.9.</summary>
    public double SolarGain { get; init; } = 0.5;

    /// <summary>Share of the glazing loss that the night curtain saves, 0 (none) to 0.8.</summary>
    public double CurtainSaving { get; init; } = 0.25;

    /// <summary>Air temperature above which the vents open, °C.</summary>
    public double VentAboveC { get; init; } = 24;

    /// <summary>Heat capacity of plants, benches and air, J/(m²·K) of floor.</summary>
    public double AirNodeJPerM2K { get; init; } = 30_000;

    /// <summary>Heat capacity of the soil that follows the day, J/(m²·K) of floor.</summary>
    public double FloorJPerM2K { get; init; } = 250_000;

    /// <summary>Coupling of air and floor, W/(m²·K).</summary>
    public double FloorUWPerM2K { get; init; } = 6;

    /// <summary>Coupling of the floor and the deep ground, W/(m²·K).</summary>
    public double GroundUWPerM2K { get; init; } = 0.4;

    /// <summary>Temperature of the deep ground, °C.</summary>
    public double GroundC { get; init; } = 9;

    /// <summary>Power of the backup heater, W (0 to 100 000); it runs only where the controller is told one is fitted.</summary>
    public double BackupWatts { get; init; } = 2000;

    /// <summary>Heat loss coefficient of glazing and leaks without the curtain, W/K (air at 0.33 Wh/(m³·K)).</summary>
    public double LossWPerK => (GlazingAreaM2 * GlazingUWPerM2K) + (0.33 * VolumeM3 * AirChangesPerHour);
}
