using System.Text.Json;
using PileController.Control.Decisions;
using PileController.Records.Keeping;
using PileController.Records.Packing;
using PileController.Records.Storage;

namespace PileController.Records.Queries;

/// <summary>
/// One question for decisions, answered newest first: from the ticks' blocks for what has not been summed up, then day
/// by day. A damaged day is told, and answered from its blocks where they are still kept.
/// </summary>
/// <param name="contents">The record.</param>
/// <param name="cache">What was read lately.</param>
/// <param name="ask">What is asked.</param>
/// <param name="tellDamage">Told what could not be read.</param>
internal sealed class DecisionsQuery(
    RecordContents contents, QueryCache cache, DecisionAsk ask, Action<string> tellDamage)
{
    private readonly TimeRange _range = new(ask.FromUtcMilliseconds, ask.ToUtcMilliseconds);
    private readonly DecisionKinds _kinds = ask.Kinds ?? (DecisionKinds)(-1);
    private readonly List<DecisionLine> _found = [];

    /// <summary>The answer.</summary>
    public IReadOnlyList<DecisionLine> Answer()
    {
        ArgumentOutOfRangeException.ThrowIfNegative(ask.Limit);
        AddBlocks(contents.LastSummed + 1, long.MaxValue);
        foreach (StoredDay day in contents.Days(_range, tellDamage).Where(day => MayHold(day.Head)).Reverse())
        {
            if (_found.Count >= ask.Limit)
            {
                break;
            }

            if (!TryAdd(() => cache.Lines(day, ask), day.Damage, day.Head.FirstSequence, day.Head.LastSequence))
            {
                AddBlocks(day.Head.FirstSequence, day.Head.LastSequence);
            }
        }

        return _found.Count > ask.Limit ? _found[..ask.Limit] : _found;
    }

    private bool MayHold(BatchHead head) => (head.Kinds & _kinds) != 0;

    private void AddBlocks(long firstSequence, long lastSequence)
    {
        foreach (StoredBatch stored in contents.Batches(_range, firstSequence, lastSequence, tellDamage)
            .Where(batch => MayHold(batch.Head)).Reverse())
        {
            if (_found.Count >= ask.Limit)
            {
                break;
            }

            TryAdd(stored.Lines, stored.Damage, firstSequence, lastSequence);
        }
    }

    private bool TryAdd(
        Func<IReadOnlyList<DecisionLine>> open, Func<Exception, string> damage, long firstSequence, long lastSequence)
    {
        try
        {
            _found.AddRange(open()
                .Where(line => line.Sequence >= firstSequence && line.Sequence <= lastSequence)
                .Where(ask.Holds)
                .Reverse());
            return true;
        }
        catch (Exception exception) when (RecordShelf.IsDamage(exception) || exception is IOException or JsonException)
        {
            tellDamage(damage(exception));
            return false;
        }
    }
}
