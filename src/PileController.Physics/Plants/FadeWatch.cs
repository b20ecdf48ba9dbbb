namespace PileController.Physics.Plants;

/// <summary>Tells when a heap fades: the first day after lighting when the 7-day mean of heat made falls below half of its best.</summary>
public sealed class FadeWatch
{
    private const int Span = 7;
    private const double FadedShare = 0.5;

    private readonly Queue<double> _last = new(Span + 1);
    private double _best;

    /// <summary>Day on which it faded; null while it has not.</summary>
    public double? FadesOnDay { get; private set; }

    /// <summary>Takes in a day.</summary>
    /// <param name="day">Days since the heap was built, at the day's end.</param>
    /// <param name="generatedWatts">Heat made, mean over the day, W.</param>
    /// <param name="litOnDay">Day on which it lit; null while it has not.</param>
    public void Add(double day, double generatedWatts, double? litOnDay)
    {
        _last.Enqueue(generatedWatts);
        if (_last.Count > Span)
        {
            _last.Dequeue();
        }

        if (_last.Count < Span)
        {
            return;
        }

        double mean = _last.Average();
        _best = Math.Max(_best, mean);
        if (litOnDay is double lit && day > lit && mean < FadedShare * _best)
        {
            FadesOnDay ??= day;
        }
    }
}
