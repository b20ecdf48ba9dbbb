using PileController.Control.Readings;

namespace PileController.Commissioning;

/// <summary>The readings of one channel over some looks, and what statistics make of them.</summary>
internal sealed class Series
{
    private readonly double[] _seconds;
    private readonly double[] _values;

    private Series(double[] seconds, double[] values)
    {
        _seconds = seconds;
        _values = values;
    }

    /// <summary>How many readings.</summary>
    public int Count => _values.Length;

    /// <summary>The readings.</summary>
    public IReadOnlyList<double> Values => _values;

    /// <summary>Mean; not a number without readings.</summary>
    public double Mean => Count == 0 ? double.NaN : _values.Average();

    /// <summary>Sample standard deviation; 0 with fewer than two readings.</summary>
    public double Deviation
    {
        get
        {
            double mean = Mean;
            return Count < 2 ? 0 : Math.Sqrt(_values.Sum(value => (value - mean) * (value - mean)) / (Count - 1));
        }
    }

    /// <summary>Largest less smallest; 0 without readings.</summary>
    public double Band => Count == 0 ? 0 : _values.Max() - _values.Min();

    /// <summary>How far the least-squares line runs from the first reading to the last, in the channel's unit.</summary>
    public double Drift
    {
        get
        {
            if (Count < 2)
            {
                return 0;
            }

            double middle = _seconds.Average();
            double mean = Mean;
            double across = 0;
            double along = 0;
            for (int i = 0; i < Count; i++)
            {
                across += (_seconds[i] - middle) * (_values[i] - mean);
                along += (_seconds[i] - middle) * (_seconds[i] - middle);
            }

            return along == 0 ? 0 : across / along * (_seconds[^1] - _seconds[0]);
        }
    }

    /// <summary>Standard deviation of the noise alone, from the steps between neighbours: a steady rise is no noise.</summary>
    public double Noise => Count < 3
        ? 0
        : Math.Sqrt(_values.Skip(1).Zip(_values, (next, one) => (next - one) * (next - one)).Sum() / (2 * (Count - 1)));

    /// <summary>A channel's readings over looks; a look without a reading is left out.</summary>
    public static Series Of(IReadOnlyList<Look> looks, Channel channel) => Of(looks, look => look.Of(channel));

    /// <summary>The difference of two channels, tick by tick.</summary>
    public static Series Difference(IReadOnlyList<Look> looks, Channel one, Channel other) =>
        Of(looks, look => look.Of(one) - look.Of(other));

    /// <summary>The looks of the last so many seconds.</summary>
    public static IReadOnlyList<Look> Last(IReadOnlyList<Look> looks, double seconds) =>
        looks.Count == 0 ? [] : [.. looks.Where(look => look.Seconds > looks[^1].Seconds - seconds)];

    private static Series Of(IReadOnlyList<Look> looks, Func<Look, double?> value)
    {
        (double Seconds, double Value)[] kept =
            [.. looks.Select(look => (look.Seconds, Value: value(look))).Where(pair => pair.Value is not null).Select(pair => (pair.Seconds, pair.Value!.Value))];
        return new Series([.. kept.Select(pair => pair.Seconds)], [.. kept.Select(pair => pair.Value)]);
    }
}
