namespace PileController.Plans.Ahead;

/// <summary>
/// Tells when a heap fades: on the first day after lighting on which the mean of the last seven days' heat is below
/// half the best such mean since lighting. A heap that stalls (its active zone below 40 °C for a day) has faded too.
/// </summary>
internal sealed class FadeWatch
{
    /// <summary>The definition, in a sentence for people.</summary>
    public const string Meaning = "It fades on the first day after lighting on which the heat of the last seven days is below half its best week, or when it stalls.";

    private const int Window = 7;
    private const double Share = 0.5;

    private readonly double[] _week = new double[Window];
    private int _days;
    private double _best;

    /// <summary>Day on which the heap faded, or null so far.</summary>
    public int? FadedOnDay { get; private set; }

    /// <summary>Takes in a day.</summary>
    /// <param name="generated">Heat made on that day, in any unit.</param>
    /// <param name="lit">Whether the heap has lit by its end.</param>
    public void Add(double generated, bool lit)
    {
        _week[_days % Window] = generated;
        _days++;
        if (!lit || _days < Window)
        {
            return;
        }

        double mean = _week.Average();
        _best = Math.Max(_best, mean);
        if (FadedOnDay is null && mean < Share * _best)
        {
            FadedOnDay = _days;
        }
    }
}
