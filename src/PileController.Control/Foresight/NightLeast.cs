namespace PileController.Control.Foresight;

/// <summary>How cold the house becomes in one night of its own model.</summary>
/// <param name="DrawnC">Least air when the heap gives what it can against frost, °C.</param>
/// <param name="IdleC">Least air when it is drawn on for comfort at most, °C.</param>
internal readonly record struct NightLeast(double DrawnC, double IdleC);
