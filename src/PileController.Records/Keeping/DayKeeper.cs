using PileController.Records.Packing;
using PileController.Records.Storage;
using PileController.Records.Summaries;

namespace PileController.Records.Keeping;

/// <summary>
/// Sums up each day of ticks as soon as the store has all of it, and deletes what need not be kept longer. The summary is
/// made from the stored ticks, so whatever cut comes between them it is made at the next commit; ticks are deleted only
/// once their summary is safe. No clock is asked.
/// </summary>
/// <threadsafety>One thread only.</threadsafety>
internal sealed class DayKeeper(RecordStore store, RecordOptions options, Faults faults)
{
    // A record that was never summed up comes after by and by; ticks wait while it does.
    private const int MostDaysAtOnce = 4;

    /// <summary>Sums up what is due and deletes what is old.</summary>
    public void Keep()
    {
        int days = 0;
        while (days < MostDaysAtOnce && SumNext())
        {
            days++;
        }

        store.Ticks.Drop(options.KeepTicks, upTo: store.Lasting.LastSequence);
        store.Minutes.Drop(options.KeepMinuteTicks, upTo: long.MaxValue);
        if (days > 0)
        {
            // Once a day, so that memory does not grow with the newest files.
            store.LetGo();
        }
        else
        {
            store.Rest();
        }
    }

    /// <summary>Writes a day. What lasts is written last: it says that the day is done.</summary>
    public static void Write(RecordStore store, SummedDay day)
    {
        if (store.Minutes.LastSequence < day.Head.FirstSequence)
        {
            store.Minutes.Write([new FileEntry(day.Head, [PackedRows.Of(day.Rows[(int)Tier.Minute]).Bytes])]);
        }

        byte[]?[] parts = new byte[]?[FileKind.Lasting.Collections.Count];
        foreach (Tier tier in Tiers.All.Where(tier => tier != Tier.Minute))
        {
            parts[LastingPart.Of(tier)] = PackedRows.Of(day.Rows[(int)tier]).Bytes;
        }

        parts[LastingPart.Decisions] = day.Lines.Count == 0 ? null : PackedLines.Of(day.Lines).Bytes;
        parts[LastingPart.Text] = day.Text.Pack();
        store.Lasting.Write([new FileEntry(day.Head, parts) { Marks = LineMarks.Of(day.Lines) }]);
    }

    private bool SumNext()
    {
        store.Minutes.Recover(faults);
        store.Lasting.Recover(faults);
        long covered = store.Lasting.LastSequence;
        IReadOnlyList<StoredBatch> left = [.. new RecordContents(store, [])
            .StoredAfter(covered, faults.Damaged)];
        if (left.Count == 0)
        {
            return false;
        }

        long first = Math.Max(covered + 1, left[0].Head.FirstSequence);
        long last = (((first - 1) / options.DayTicks) + 1) * options.DayTicks;
        if (store.Ticks.LastSequence < last)
        {
            return false;
        }

        Write(store, SummedDay.Of([.. left.TakeWhile(batch => batch.Head.FirstSequence <= last)], first, last, faults.Damaged));
        return true;
    }
}
