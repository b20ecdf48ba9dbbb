namespace PileController.Physics.Exchangers;

/// <summary>Ground round a buried line.</summary>
/// <param name="DepthM">Depth of the line's axis, m.</param>
/// <param name="ConductivityWPerMK">Conductivity of the ground, W/(m·K); about 1.5 for damp soil (from memory).</param>
public readonly record struct Ground(double DepthM, double ConductivityWPerMK);
