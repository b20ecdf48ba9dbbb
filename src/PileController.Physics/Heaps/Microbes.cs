namespace PileController.Physics.Heaps;

/// <summary>How fast microbes work, as factors of their best rate.</summary>
/// <remarks>
/// Decisions and the plant use cardinal temperatures. Haug's expression is kept as a cross-check below 55 °C only:
/// it rises to a peak at 71.6 °C, where the cardinal curve says they are dead. The two disagree above 60 °C.
/// </remarks>
public static class Microbes
{
    /// <summary>Cardinal temperatures of the thermophilic response, °C: 5 / 58.6 / 71.6 (from memory, believed Richard and Walker 2006).</summary>
    public static CardinalTemperatures Thermophilic { get; } = new(5, 58.6, 71.6);

    /// <summary>Cardinal temperatures of the mesophilic response, °C (from memory: mesophiles work from just above freezing to about 45 °C, best near 35 °C).</summary>
    public static CardinalTemperatures Mesophilic { get; } = new(0, 35, 47);

    /// <summary>Haug's temperature factor 1.066^(T−20) − 1.21^(T−60), not below 0 (Haug 1993). Relative to 20 °C.</summary>
    public static double HaugTemperature(double celsius) =>
        Math.Max(0, Portable.Pow(1.066, celsius - 20) - Portable.Pow(1.21, celsius - 60));

    /// <summary>Haug's moisture factor 1/(exp(−17.684 m + 7.0622) + 1) (Haug 1993), m the moisture fraction on a wet basis.</summary>
    public static double Moisture(double moistureFraction) =>
        1 / (Portable.Exp((-17.684 * moistureFraction) + 7.0622) + 1);

    /// <summary>Haug's free-air-space factor 1/(exp(−23.675 a + 3.4945) + 1) (Haug 1993).</summary>
    public static double FreeAirSpace(double fraction) => 1 / (Portable.Exp((-23.675 * fraction) + 3.4945) + 1);

    /// <summary>Haug's oxygen factor O₂/(O₂ + 2) (Haug 1993), O₂ in volume per cent.</summary>
    public static double Oxygen(double volumePercent) => volumePercent / (volumePercent + 2);
}

/// <summary>A growth response with a least, best and greatest temperature (Rosso's form); 0 outside, 1 at its best.</summary>
/// <param name="LeastC">Nothing grows below, °C.</param>
/// <param name="BestC">Growth is fastest, °C.</param>
/// <param name="MostC">Nothing grows above, °C.</param>
public readonly record struct CardinalTemperatures(double LeastC, double BestC, double MostC)
{
    /// <summary>The factor at a temperature, 0 to 1.</summary>
    public double At(double celsius)
    {
        if (celsius <= LeastC || celsius >= MostC)
        {
            return 0;
        }

        double fromLeast = celsius - LeastC;
        double span = BestC - LeastC;
        return (celsius - MostC) * fromLeast * fromLeast
            / (span * ((span * (celsius - BestC)) - ((BestC - MostC) * (BestC + LeastC - (2 * celsius)))));
    }
}
