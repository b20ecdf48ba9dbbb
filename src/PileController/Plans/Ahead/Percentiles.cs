namespace PileController.Plans.Ahead;

/// <summary>
/// Three percentiles of what the seasons came to. Between two seasons the value lies straight between theirs. A thing
/// that never happened in a season counts as later than all days, so a percentile may be null: never, within the season.
/// </summary>
/// <param name="P10">A tenth of the seasons lie below.</param>
/// <param name="P50">Half of them lie below.</param>
/// <param name="P90">Nine tenths of them lie below.</param>
internal sealed record Percentiles(double? P10, double? P50, double? P90)
{
    /// <summary>The percentiles of some values.</summary>
    /// <exception cref="ArgumentException">There are none.</exception>
    public static Percentiles Of(IEnumerable<double> values) => Of(values.Select(v => (double?)v));

    /// <summary>The percentiles of values of which some may be null, for never.</summary>
    /// <exception cref="ArgumentException">There are none.</exception>
    public static Percentiles Of(IEnumerable<double?> values)
    {
        double[] sorted = [.. values.Select(v => v ?? double.PositiveInfinity).Order()];
        return sorted.Length > 0
            ? new Percentiles(At(sorted, 0.1), At(sorted, 0.5), At(sorted, 0.9))
            : throw new ArgumentException("values is empty; allowed: one value or more.", nameof(values));
    }

    /// <summary>The same, each turned into something else; order kept.</summary>
    public Percentiles Select(Func<double, double> to) => new(Turned(P10, to), Turned(P50, to), Turned(P90, to));

    private static double? Turned(double? value, Func<double, double> to) => value is { } v ? to(v) : null;

    private static double? At(double[] sorted, double share)
    {
        double place = share * (sorted.Length - 1);
        int below = (int)place;
        double part = place - below;
        double low = sorted[below];
        double high = part > 0 ? sorted[below + 1] : low;
        return double.IsInfinity(high) ? null : low + (part * (high - low));
    }
}
