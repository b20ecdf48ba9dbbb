using System.Text.Json;
using PileController.Records.Keeping;
using PileController.Records.Packing;
using PileController.Records.Storage;
using PileController.Records.Summaries;

namespace PileController.Records.Checking;

/// <summary>
/// Checks the days of ticks that have been summed up: every checksum, every number, each tier against the next finer one,
/// and all of it against the ticks where those are still kept.
/// </summary>
/// <param name="contents">The record.</param>
/// <param name="tell">Told what is wrong.</param>
internal sealed class DayVerifier(RecordContents contents, Action<string> tell)
{
    private readonly List<StoredBatch> _batches = [.. contents.StoredAfter(0, _ => { })];

    /// <summary>Checks all of them and returns how many there are.</summary>
    public int Check()
    {
        int days = 0;
        long last = 0;
        foreach (StoredDay day in contents.Days(Queries.TimeRange.All, tell))
        {
            if (days > 0 && day.Head.FirstSequence != last + 1)
            {
                tell($"The summaries end at tick {last} and go on at tick {day.Head.FirstSequence}.");
            }

            days++;
            last = day.Head.LastSequence;
            try
            {
                CheckOne(day);
            }
            catch (Exception exception) when (RecordShelf.IsDamage(exception) || exception is JsonException or IOException)
            {
                tell(day.Damage(exception));
            }
        }

        long firstTick = contents.Store.Ticks.FirstSequence;
        if (days > 0 && firstTick > last + 1)
        {
            tell($"The summaries end at tick {last} and the ticks begin at tick {firstTick}.");
        }

        return days;
    }

    private void CheckOne(StoredDay day)
    {
        List<SummaryRow>? finer = null;
        List<List<SummaryRow>?> tiers = [];
        foreach (Tier tier in Tiers.All)
        {
            List<SummaryRow>? rows = day.Rows(tier)?.Rows();
            tiers.Add(rows);
            if (rows is not null && finer is not null && !AreSame(rows, SummaryRow.Merge(finer, tier)))
            {
                Differs(day, $"the rows of {TextOf(tier)} do not agree with the finer ones");
            }

            finer = rows ?? finer;
        }

        long firstMinute = contents.Store.Minutes.FirstSequence;
        if (tiers[(int)Tier.Minute] is null && firstMinute > 0 && firstMinute <= day.Head.FirstSequence)
        {
            Differs(day, $"its rows of {TextOf(Tier.Minute)} are missing");
        }

        IReadOnlyList<DecisionLine> lines = day.Lines();
        if (day.Marks != LineMarks.Unknown && day.Marks != LineMarks.Of(lines))
        {
            Differs(day, "the modes and curbs it is marked with are not those of its decisions");
        }

        DayText text = day.Text();
        if (Again(day) is not { } again)
        {
            return;
        }

        if (again.Head != day.Head)
        {
            Differs(day, "its head does not agree with the ticks");
        }

        foreach (Tier tier in Tiers.All)
        {
            if (tiers[(int)tier] is { } rows && !AreSame(rows, again.Rows[(int)tier]))
            {
                Differs(day, $"the rows of {TextOf(tier)} do not agree with the ticks");
            }
        }

        if (!lines.SequenceEqual(again.Lines) || !text.Pack().AsSpan().SequenceEqual(again.Text.Pack()))
        {
            Differs(day, "its decisions or commands do not agree with the ticks");
        }
    }

    // The same day summed up from the ticks; null when those are no longer kept, or not all to be read (told elsewhere).
    private SummedDay? Again(StoredDay day)
    {
        long first = day.Head.FirstSequence;
        long last = day.Head.LastSequence;
        List<StoredBatch> batches = [.. _batches
            .SkipWhile(batch => batch.Head.LastSequence < first).TakeWhile(batch => batch.Head.FirstSequence <= last)];
        if (batches.Count == 0 || batches[0].Head.FirstSequence > first || batches[^1].Head.LastSequence < last
            || batches.Zip(batches.Skip(1)).Any(pair => pair.Second.Head.FirstSequence != pair.First.Head.LastSequence + 1))
        {
            return null;
        }

        bool damaged = false;
        SummedDay again = SummedDay.Of(batches, first, last, _ => damaged = true);
        return damaged ? null : again;
    }

    private static string TextOf(Tier tier) => $"{Tiers.TicksOf(tier)} ticks";

    private static bool AreSame(List<SummaryRow> one, IReadOnlyList<SummaryRow> other) =>
        one.Count == other.Count && one.Zip(other).All(pair => pair.First.IsSameAs(pair.Second));

    private void Differs(StoredDay day, string what) =>
        tell($"The summary of tick {day.Head.FirstSequence} to {day.Head.LastSequence}: {what}.");
}
