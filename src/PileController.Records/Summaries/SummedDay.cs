using System.Text.Json;
using PileController.Control.Decisions;
using PileController.Records.Keeping;
using PileController.Records.Packing;
using PileController.Records.Storage;

namespace PileController.Records.Summaries;

/// <summary>
/// A day of ticks summed up: a stretch of numbers, not of the calendar. It is a function of the ticks alone, so it can
/// be made again from them at any time and compared.
/// </summary>
/// <param name="Head">Which ticks; its count spans numbers that are missing.</param>
/// <param name="Rows">The rows of each tier, finest first.</param>
/// <param name="Lines">The lines of its decisions, oldest first.</param>
/// <param name="Text">What is neither.</param>
internal sealed record SummedDay(
    BatchHead Head, IReadOnlyList<IReadOnlyList<SummaryRow>> Rows, IReadOnlyList<DecisionLine> Lines, DayText Text)
{
    /// <summary>Sums up the ticks of some batches between two numbers. A batch that is damaged is left out and told.</summary>
    /// <param name="batches">The batches that touch the stretch, in order; at least one.</param>
    /// <param name="first">Number of the first tick that may belong to it.</param>
    /// <param name="last">Number of the last.</param>
    /// <param name="tellDamage">Told what could not be read.</param>
    public static SummedDay Of(IReadOnlyList<StoredBatch> batches, long first, long last, Action<string> tellDamage)
    {
        MinuteRows minutes = new();
        List<DecisionLine> lines = [];
        List<CommandOfTick> commands = [];
        BatchText? text = null;
        JsonElement? memory = null;
        foreach (StoredBatch stored in batches)
        {
            Guard(stored, tellDamage, () =>
            {
                PackedBatch batch = stored.Batch();
                text = batch.Text();
                memory = batch.Head.LastSequence <= last ? text.HandedOn ?? memory : memory;
                minutes.Add(
                    batch, (int)Math.Max(first - batch.FirstSequence, 0), (int)Math.Min(last - batch.FirstSequence + 1, batch.Count));
                commands.AddRange(text.Commands
                    .Select(command => new CommandOfTick(batch.FirstSequence + command.Row, command.Command))
                    .Where(command => command.Sequence >= first && command.Sequence <= last));
            });
            Guard(stored, tellDamage, () => lines.AddRange(
                stored.Lines().Where(line => line.Sequence >= first && line.Sequence <= last)));
        }

        List<IReadOnlyList<SummaryRow>> rows = [minutes.All];
        foreach (Tier tier in Tiers.All.Skip(1))
        {
            rows.Add(SummaryRow.Merge(rows[^1], tier));
        }

        return new SummedDay(
            HeadOf(batches, first, last, minutes.All, lines), rows, lines, new DayText(text?.Origin, memory, commands));
    }

    private static BatchHead HeadOf(
        IReadOnlyList<StoredBatch> batches, long first, long last, IReadOnlyList<SummaryRow> minutes, List<DecisionLine> lines)
    {
        long begin = Math.Max(first, batches[0].Head.FirstSequence);
        long end = Math.Min(last, batches[^1].Head.LastSequence);
        DecisionKinds kinds = lines.Aggregate(DecisionKinds.Steady, (all, line) => all | line.Kinds);
        return minutes.Count > 0
            ? new BatchHead(begin, (int)(end - begin + 1), minutes.Min(row => row.FirstUtc), minutes.Max(row => row.LastUtc), kinds)
            : new BatchHead(
                begin, (int)(end - begin + 1), batches.Min(b => b.Head.LeastUtc), batches.Max(b => b.Head.MostUtc), kinds);
    }

    private static void Guard(StoredBatch stored, Action<string> tellDamage, Action work)
    {
        try
        {
            work();
        }
        catch (Exception exception) when (RecordShelf.IsDamage(exception) || exception is JsonException)
        {
            tellDamage(stored.Damage(exception));
        }
    }
}
