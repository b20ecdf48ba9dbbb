namespace PileController.Physics.Hydraulics;

/// <summary>Loss of a part-closed valve or a blocked line.</summary>
public static class Throttle
{
    // Share of a sharp opening that the jet fills (from memory).
    private const double Contraction = 0.62;

    /// <summary>
    /// Loss coefficient, on the speed in the full bore, of a sharp-edged opening of part of its area
    /// (Borda and Carnot's sudden widening of the contracted jet): 0 when wide open, infinity when shut.
    /// </summary>
    /// <param name="openShare">Open share of the area, 0 to 1.</param>
    public static double LossK(double openShare)
    {
        Require.Within(openShare, 0, 1, "(share)");
        // The contraction fades as the opening grows to the full bore, so that wide open costs nothing.
        double jet = openShare * (Contraction + ((1 - Contraction) * openShare));
        double widening = (1 / jet) - 1;
        return widening * widening;
    }

    /// <summary>The opening that has a loss coefficient: <see cref="LossK"/> solved for its share.</summary>
    /// <param name="lossK">Loss coefficient, 0 or more.</param>
    /// <returns>Open share of the area, 0 to 1.</returns>
    public static double OpenShare(double lossK)
    {
        Require.NotNegative(lossK, "(loss coefficient)");
        double jet = 1 / (1 + Math.Sqrt(lossK));
        double rest = 1 - Contraction;
        return (Math.Sqrt((Contraction * Contraction) + (4 * rest * jet)) - Contraction) / (2 * rest);
    }
}
