namespace PileController.Control.Foresight;

/// <summary>How far outlooks have been wrong, by how far ahead they looked: mean squares, K², from a prior on.</summary>
public static class OutlookErrors
{
    // The weight of one outlook that has come due: some ten days of four a day count.
    private const double Rate = 1.0 / 40;

    private static readonly int[] LeadHours = [1, 3, 6, 12, 24, 48, 72];

    // Standard errors before anything was learned, K, without and with a forecast (common practice, no source).
    private static readonly double[] OwnPriorK = [0.6, 1.1, 1.5, 2.2, 3, 3.8, 4.5];
    private static readonly double[] ForecastPriorK = [0.6, 0.9, 1.2, 1.4, 1.7, 2.2, 2.8];

    /// <summary>How far ahead errors are kept, h.</summary>
    public static ReadOnlySpan<int> Leads => LeadHours;

    /// <summary>Before anything was learned of the controller's own outlook.</summary>
    internal static double[] OwnPrior => [.. OwnPriorK.Select(k => k * k)];

    /// <summary>Before anything was learned of forecasts.</summary>
    internal static double[] ForecastPrior => [.. ForecastPriorK.Select(k => k * k)];

    /// <summary>The standard error at a lead, K; straight between the leads that are kept.</summary>
    /// <param name="meanSquares">Mean squares by lead, K².</param>
    /// <param name="leadHours">How far ahead, h, 0 or more.</param>
    public static double SigmaK(ReadOnlySpan<double> meanSquares, double leadHours)
    {
        if (leadHours <= LeadHours[0])
        {
            return Math.Sqrt(meanSquares[0]);
        }

        for (int i = 1; i < LeadHours.Length; i++)
        {
            if (leadHours <= LeadHours[i])
            {
                double share = (leadHours - LeadHours[i - 1]) / (LeadHours[i] - LeadHours[i - 1]);
                return Math.Sqrt(meanSquares[i - 1] + (share * (meanSquares[i] - meanSquares[i - 1])));
            }
        }

        return Math.Sqrt(meanSquares[^1]);
    }

    internal static double Learned(double meanSquare, double errorK) => meanSquare + (Rate * ((errorK * errorK) - meanSquare));
}
