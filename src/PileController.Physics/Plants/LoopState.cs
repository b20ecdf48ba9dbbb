namespace PileController.Physics.Plants;

/// <summary>Water temperatures of the loop, °C, in the order the water runs; and the tank.</summary>
/// <param name="CoilC">Cells of the coil, inlet first.</param>
/// <param name="SupplyC">Cells of the line to the house.</param>
/// <param name="HouseC">Cells of the pipe in the house.</param>
/// <param name="ReturnC">Cells of the line back to the heap.</param>
/// <param name="TankC">The tank.</param>
public sealed record LoopState(double[] CoilC, double[] SupplyC, double[] HouseC, double[] ReturnC, double TankC);
