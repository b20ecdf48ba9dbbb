namespace PileController.Control;

/// <summary>What the controller is told of the house besides its loss. Nobody sets it by itself: it follows from house and loop as built. Defaults are Alder Bank's.</summary>
public sealed record HouseTold
{
    /// <summary>Heat capacity of air, plants and benches, J/K.</summary>
    public double AirJPerK { get; init; } = 0.9e6;

    /// <summary>Heat capacity of the soil that follows the day, J/K.</summary>
    public double FloorJPerK { get; init; } = 7.5e6;

    /// <summary>Coupling of air and floor, W/K.</summary>
    public double FloorWPerK { get; init; } = 180;

    /// <summary>Coupling of the floor and the deep ground, W/K.</summary>
    public double GroundWPerK { get; init; } = 12;

    /// <summary>Temperature of the deep ground, °C.</summary>
    public double GroundC { get; init; } = 9;

    /// <summary>Conductance from the water to the air along the whole pipe in the house, W/K.</summary>
    public double PipeWPerK { get; init; } = 99;

    /// <summary>Loss of the tank to the house air, W/K.</summary>
    public double TankWPerK { get; init; } = 9;

    /// <summary>Heat capacity of the water in the tank, J/K.</summary>
    public double TankJPerK { get; init; } = 0.836e6;

    /// <summary>Share of the sun that stays as heat times the floor, m².</summary>
    public double SunM2 { get; init; } = 15;

    /// <summary>By how much the night curtain lessens the loss, W/K; 0 without one.</summary>
    public double CurtainWPerK { get; init; } = 51.1;

    /// <summary>Air temperature above which the vents open, °C.</summary>
    public double VentAboveC { get; init; } = 24;
}
