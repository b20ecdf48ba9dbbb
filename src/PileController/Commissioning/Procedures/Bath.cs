using PileController.Control.Readings;

namespace PileController.Commissioning.Procedures;

/// <summary>Waiting for probes in a bath to come to rest.</summary>
internal static class Bath
{
    /// <summary>How long readings must rest, s (common practice, no source).</summary>
    public const double RestSeconds = 180;

    /// <summary>Longest wait, s. A probe in a steel sleeve takes some minutes for a fall of 60 K.</summary>
    public const double LongestSeconds = 1800;

    // Three steps of the probe's own grain: noise makes two of them (the simulated probe's noise is half a step).
    private const double RestQuanta = 3;

    /// <summary>A step that waits for a series to rest.</summary>
    /// <param name="say">What the grower is told.</param>
    /// <param name="quantum">The grain of the series.</param>
    /// <param name="series">The series of which each must rest.</param>
    public static Phase Phase(string say, double quantum, Func<IReadOnlyList<Look>, IEnumerable<Series>> series) => new("steady", say)
    {
        LeastSeconds = RestSeconds,
        MostSeconds = LongestSeconds,
        Enough = looks => series(Series.Last(looks, RestSeconds)).All(one => Rests(one, quantum)),
    };

    /// <summary>Whether a series rests: it stays within a band and has no slope.</summary>
    public static bool Rests(Series series, double quantum) =>
        series.Count >= 3 && series.Band <= RestQuanta * quantum && Math.Abs(series.Drift) <= quantum;

    /// <summary>Expanded uncertainty of a rested series' mean: grain of each probe in it, noise, what drift is left, the bath.</summary>
    /// <param name="series">The rested series.</param>
    /// <param name="channels">The probes in it.</param>
    /// <param name="bathKelvin">The bath lies within ± so much of what it is taken for, K.</param>
    public static double Uncertainty(Series series, IReadOnlyList<Channel> channels, double bathKelvin)
    {
        double grain = channels.Sum(channel => Math.Pow(Uncertain.Grain(ChannelTable.Of(channel).Quantum), 2));
        return Uncertain.Expanded(
            Math.Sqrt(grain), Uncertain.OfMean(series.Deviation, series.Count), Uncertain.Within(series.Drift / 2), Uncertain.Within(bathKelvin));
    }
}
