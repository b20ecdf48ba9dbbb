namespace PileController.Physics.Heaps;

/// <summary>What surrounds the heap during a step.</summary>
/// <param name="OutsideC">Air temperature, °C.</param>
/// <param name="OutsideHumidity">Relative humidity, 0 to 1.</param>
/// <param name="WindMPerS">Wind, m/s.</param>
/// <param name="GroundC">Deep ground, °C.</param>
/// <param name="BlowerM3PerS">Air drawn through the heap by the blower, m³/s of outside air; 0 for closed ducts.</param>
public readonly record struct HeapSite(
    double OutsideC, double OutsideHumidity, double WindMPerS, double GroundC, double BlowerM3PerS);
