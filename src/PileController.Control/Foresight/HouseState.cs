namespace PileController.Control.Foresight;

/// <summary>What the controller's own model of the house is at one moment.</summary>
/// <param name="AirC">Air, plants and benches, °C.</param>
/// <param name="FloorC">The soil that follows the day, °C.</param>
/// <param name="TankC">Water in the tank, °C.</param>
public readonly record struct HouseState(double AirC, double FloorC, double TankC);
