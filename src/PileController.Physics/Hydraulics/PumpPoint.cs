namespace PileController.Physics.Hydraulics;

/// <summary>One measured point of a pump.</summary>
/// <param name="FlowLitresPerMinute">Flow, L/min, 0 or more.</param>
/// <param name="HeadM">Head, m.</param>
/// <param name="Watts">Electric power, W.</param>
/// <param name="Duty">Duty (or share of the rated voltage) it was measured at, above 0 to 1.</param>
public readonly record struct PumpPoint(double FlowLitresPerMinute, double HeadM, double Watts, double Duty = 1);
