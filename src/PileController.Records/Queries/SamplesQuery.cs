using System.Text.Json;
using PileController.Records.Keeping;
using PileController.Records.Packing;
using PileController.Records.Storage;
using PileController.Records.Summaries;

namespace PileController.Records.Queries;

/// <summary>
/// One question for some series. Each day of ticks is answered from the coarsest tier whose rows are narrow against the
/// buckets asked for; what is not summed up yet, from the ticks. A damaged part is told, and answered from another tier
/// where there is one.
/// </summary>
/// <param name="contents">The record.</param>
/// <param name="cache">What was read lately.</param>
/// <param name="range">The stretch of time.</param>
/// <param name="stepMilliseconds">Width of a bucket, ms; 0 for every tick.</param>
/// <param name="tellDamage">Told what could not be read.</param>
internal sealed class SamplesQuery(
    RecordContents contents, QueryCache cache, TimeRange range, long stepMilliseconds, Action<string> tellDamage)
{
    // A row goes whole into the bucket of its middle: so much narrower, at most an eighth of a bucket lies beside it.
    private const int RowsABucket = 4;

    /// <summary>The answers, one a series.</summary>
    /// <param name="series">Numbers of the series.</param>
    public IReadOnlyList<IReadOnlyList<SeriesPoint>> Answer(IReadOnlyList<int> series)
    {
        SeriesBuckets[] buckets = [.. series.Select(one => new SeriesBuckets(one, stepMilliseconds))];
        long firstTick = contents.Store.Ticks.FirstSequence;
        foreach (StoredDay day in contents.Days(range, tellDamage))
        {
            bool hasTicks = firstTick > 0 && firstTick <= day.Head.FirstSequence;
            if (!InOrderOfFitness(day.Head, hasTicks).Any(tier => tier is { } one
                ? TryRows(day, one, series, buckets)
                : TryTicks(day.Head.FirstSequence, day.Head.LastSequence, series, buckets)))
            {
                tellDamage($"Nothing can be read of tick {day.Head.FirstSequence} to {day.Head.LastSequence}.");
            }
        }

        TryTicks(contents.LastSummed + 1, long.MaxValue, series, buckets);
        var points = new IReadOnlyList<SeriesPoint>[buckets.Length];
        Parallel.For(0, buckets.Length, one => points[one] = buckets[one].Points());
        return points;
    }

    // The coarsest that fits, then finer ones down to the ticks (null), then coarser ones for want of better.
    private IEnumerable<Tier?> InOrderOfFitness(BatchHead day, bool hasTicks)
    {
        List<Tier> fitting = [.. Tiers.All.Where(tier => Fits(day, tier)).Reverse()];
        IEnumerable<Tier?> ticks = hasTicks ? [null] : [];
        return [.. fitting, .. ticks, .. Tiers.All.Except(fitting)];
    }

    private bool Fits(BatchHead day, Tier tier)
    {
        double spacing = (double)(day.MostUtc - day.LeastUtc) / Math.Max(day.Count - 1, 1);
        return (Math.Min(Tiers.TicksOf(tier), day.Count) - 1) * spacing * RowsABucket <= stepMilliseconds && stepMilliseconds > 0;
    }

    private bool TryRows(StoredDay day, Tier tier, IReadOnlyList<int> series, SeriesBuckets[] buckets)
    {
        try
        {
            if (cache.Rows(day, tier) is not { } rows)
            {
                return false;
            }

            (long[] first, long[] last) = rows.Times();
            SummaryCell[][] cells = [.. series.Select(rows.Cells)];
            for (int one = 0; one < buckets.Length; one++)
            {
                for (int row = 0; row < first.Length; row++)
                {
                    if (range.Holds(first[row] + ((last[row] - first[row]) / 2)))
                    {
                        buckets[one].Add(first[row], last[row], cells[one][row]);
                    }
                }
            }

            return true;
        }
        catch (Exception exception) when (IsUnreadable(exception))
        {
            tellDamage(day.Damage(exception));
            return false;
        }
    }

    private bool TryTicks(long firstSequence, long lastSequence, IReadOnlyList<int> series, SeriesBuckets[] buckets)
    {
        bool any = false;
        foreach (UnpackedTicks[] some in UnpackedTicks.Of(
            contents.Batches(range, firstSequence, lastSequence, tellDamage), cache, firstSequence, lastSequence, series))
        {
            UnpackedTicks[] sound = [.. some.Where(ticks => ticks.Damage is null)];
            Parallel.For(0, buckets.Length, one => buckets[one].Add(sound, one, range));
            any |= sound.Length > 0;
            foreach (string damage in some.Select(ticks => ticks.Damage).OfType<string>())
            {
                tellDamage(damage);
            }
        }

        return any;
    }

    private static bool IsUnreadable(Exception exception) =>
        RecordShelf.IsDamage(exception) || exception is IOException or JsonException;
}
