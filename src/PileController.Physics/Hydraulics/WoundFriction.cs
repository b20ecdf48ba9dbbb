namespace PileController.Physics.Hydraulics;

/// <summary>
/// Darcy friction factor of pipe wound in turns. The bend stirs the water across the bore: friction grows, and flow stays laminar
/// to a higher Reynolds number. White's formula while laminar, Schmidt's beyond (both from memory, held to published values).
/// </summary>
public static class WoundFriction
{
    // Width of the step from laminar to turbulent, over the critical Reynolds number (common practice, no source).
    private const double StepShare = 0.2;

    /// <summary>Friction factor at a Reynolds number.</summary>
    /// <param name="reynolds">Reynolds number, above 0.</param>
    /// <param name="relativeRoughness">Roughness over bore, 0 to 0.1.</param>
    /// <param name="curvature">Bore over diameter of the turns, above 0 to 0.5.</param>
    public static double Factor(double reynolds, double relativeRoughness, double curvature)
    {
        Require.Positive(reynolds, "(Reynolds)");
        Require.Within(curvature, 1e-6, 0.5, "(ratio)");
        double critical = CriticalReynolds(curvature);
        double share = Math.Clamp((reynolds - critical) / (StepShare * critical), 0, 1);
        double weight = share * share * (3 - (2 * share));
        return ((1 - weight) * Laminar(reynolds, curvature)) + (weight * Turbulent(reynolds, relativeRoughness, curvature));
    }

    /// <summary>Reynolds number up to which flow in turns is laminar (Schmidt, from memory).</summary>
    /// <param name="curvature">Bore over diameter of the turns.</param>
    public static double CriticalReynolds(double curvature) => 2300 * (1 + (8.6 * Portable.Pow(curvature, 0.45)));

    // White 1929: by the Dean number alone; below 11.6 the bend is not felt.
    private static double Laminar(double reynolds, double curvature)
    {
        double dean = reynolds * Math.Sqrt(curvature);
        double straight = Friction.Laminar(reynolds);
        return dean <= 11.6
            ? straight
            : straight / (1 - Portable.Pow(1 - Portable.Pow(11.6 / dean, 0.45), 1 / 0.45));
    }

    // Schmidt 1967: one factor on straight pipe up to Re 22 000, another above.
    private static double Turbulent(double reynolds, double relativeRoughness, double curvature)
    {
        double more = reynolds < 22_000
            ? 28_800 / reynolds * Portable.Pow(curvature, 0.62)
            : 0.0823 * (1 + curvature) * Portable.Pow(curvature, 0.53) * Math.Sqrt(Math.Sqrt(reynolds));
        return Friction.Churchill(reynolds, relativeRoughness) * (1 + more);
    }
}
