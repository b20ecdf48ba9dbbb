namespace PileController.Physics.Hydraulics;

/// <summary>Whether water runs fast enough to carry air bubbles along, downward runs included.</summary>
public static class AirPurge
{
    /// <summary>Speed below which bubbles stay in a falling pipe, m/s: 2 ft/s (common practice, no source).</summary>
    public const double LeastVelocityMPerS = 0.6096;

    /// <summary>Whether a speed carries bubbles down.</summary>
    /// <param name="velocityMPerS">Mean speed in the bore, m/s.</param>
    public static bool Purges(double velocityMPerS) => velocityMPerS >= LeastVelocityMPerS;

    /// <summary>Least flow that carries bubbles down a bore, L/min.</summary>
    /// <param name="innerDiameterM">Bore, m, above 0.</param>
    public static double LeastFlowLitresPerMinute(double innerDiameterM) =>
        LeastVelocityMPerS / Flow.VelocityMPerS(1, innerDiameterM);
}
