using PileController.Records;

namespace PileController.Panel.Nights;

/// <summary>What the record says of the last 24 hours, summed from buckets of a minute. Null where nothing is recorded.</summary>
/// <param name="ColdestC">Coldest house air.</param>
/// <param name="ColdestUtcMs">When that was.</param>
/// <param name="BelowMs">How long the house was below its minimum, as it was set then.</param>
/// <param name="WaterKWh">Heat by water.</param>
/// <param name="AirKWh">Heat by air.</param>
/// <param name="Starts">How often the pump was seen to start.</param>
/// <param name="UntoldMs">How much of the time has no record.</param>
/// <param name="OffsetMinutes">Local time minus UTC.</param>
internal sealed record LastDay(
    double? ColdestC, long? ColdestUtcMs, long? BelowMs, double? WaterKWh, double? AirKWh, int? Starts, long UntoldMs, int OffsetMinutes)
{
    /// <summary>Width of a bucket.</summary>
    public const long BucketMilliseconds = 60_000;

    private const double WattMillisecondsPerKWh = 3.6e9;

    /// <summary>Sums a stretch.</summary>
    /// <param name="house">Air in the house, in buckets.</param>
    /// <param name="waterDraw">Heat by water, W.</param>
    /// <param name="airDraw">Heat by air, W.</param>
    /// <param name="pumpDuty">Duty of the pump.</param>
    /// <param name="spanMilliseconds">Length of the stretch.</param>
    /// <param name="minimumAt">The house's minimum in force at a moment in UTC milliseconds, °C.</param>
    /// <param name="offsetMinutes">Local time minus UTC.</param>
    public static LastDay Of(
        IReadOnlyList<SeriesPoint> house, IReadOnlyList<SeriesPoint> waterDraw, IReadOnlyList<SeriesPoint> airDraw,
        IReadOnlyList<SeriesPoint> pumpDuty, long spanMilliseconds, Func<long, double> minimumAt, int offsetMinutes)
    {
        SeriesPoint[] known = [.. house.Where(point => point.Least is not null)];
        SeriesPoint? coldest = known.Length == 0 ? null : known.MinBy(point => point.Least);
        int told = pumpDuty.Count(point => point.Mean is not null);
        return new LastDay(
            coldest?.Least, coldest?.UtcMilliseconds,
            known.Length == 0 ? null : known.Count(point => point.Mean < minimumAt(point.UtcMilliseconds)) * BucketMilliseconds,
            told == 0 ? null : KWh(waterDraw), told == 0 ? null : KWh(airDraw), told == 0 ? null : StartsOf(pumpDuty),
            Math.Max(0, spanMilliseconds - (told * BucketMilliseconds)), offsetMinutes);
    }

    private static double KWh(IReadOnlyList<SeriesPoint> watts) =>
        watts.Sum(point => point.Mean ?? 0) * BucketMilliseconds / WattMillisecondsPerKWh;

    // A gap tells nothing: a pump found running after one has not been seen to start.
    private static int StartsOf(IReadOnlyList<SeriesPoint> duty)
    {
        int count = 0;
        bool? before = null;
        foreach (SeriesPoint point in duty)
        {
            bool? runs = point.Most is { } most ? most > 0 : null;
            count += runs == true && before == false ? 1 : 0;
            before = runs;
        }

        return count;
    }
}
