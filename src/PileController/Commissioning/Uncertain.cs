namespace PileController.Commissioning;

/// <summary>
/// Uncertainty as the guide to it reckons (JCGM 100:2008, from memory): parts add by their squares, a part that is only
/// known to lie within ± half counts as half/√3, and the expanded one is k = 2 times the standard one.
/// </summary>
internal static class Uncertain
{
    /// <summary>The factor between standard and expanded uncertainty.</summary>
    public const double Coverage = 2;

    /// <summary>Standard uncertainty of what lies within ± <paramref name="half"/>, evenly.</summary>
    public static double Within(double half) => half / Math.Sqrt(3);

    /// <summary>Standard uncertainty of a reading that comes in whole quanta.</summary>
    public static double Grain(double quantum) => Within(quantum / 2);

    /// <summary>Standard uncertainty of the mean of readings.</summary>
    public static double OfMean(double deviation, int count) => count > 0 ? deviation / Math.Sqrt(count) : double.PositiveInfinity;

    /// <summary>Expanded uncertainty of independent parts.</summary>
    public static double Expanded(params ReadOnlySpan<double> parts)
    {
        double squares = 0;
        foreach (double part in parts)
        {
            squares += part * part;
        }

        return Coverage * Math.Sqrt(squares);
    }
}
