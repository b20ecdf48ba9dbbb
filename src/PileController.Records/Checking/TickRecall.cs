using System.Text.Json;
using PileController.Control;
using PileController.Control.Decisions;
using PileController.Control.Readings;
using PileController.Records.Keeping;
using PileController.Records.Storage;

namespace PileController.Records.Checking;

/// <summary>One tick as it can be decided again: all that its step was given.</summary>
/// <param name="Origin">Who made it.</param>
/// <param name="Before">What the tick before handed on.</param>
/// <param name="Raw">What the rig said.</param>
/// <param name="Commands">The commands that took effect at it.</param>
/// <param name="At">Its moment.</param>
public sealed record RecalledTick(RecordOrigin Origin, Memory Before, RigReadings Raw, IReadOnlyList<Command> Commands, Instant At);

/// <summary>Brings back one tick: its block is run again from the memory at its head.</summary>
internal static class TickRecall
{
    /// <summary>The tick of a number, or null where it is not kept, its block is damaged or its settings are unknown.</summary>
    public static RecalledTick? Find(IEnumerable<StoredBatch> batches, long sequence, ReplaySteps steps)
    {
        StoredBatch? stored = batches.FirstOrDefault(batch => batch.Head.FirstSequence <= sequence && batch.Head.LastSequence >= sequence);
        if (stored is null)
        {
            return null;
        }

        ReplayTape tape;
        try
        {
            tape = ReplayTape.Of(stored.Batch());
        }
        catch (Exception exception) when (RecordShelf.IsDamage(exception) || exception is JsonException)
        {
            return null;
        }

        int row = (int)(sequence - tape.Batch.FirstSequence);
        if (row >= tape.Count || steps(tape.Origin) is not { } step)
        {
            return null;
        }

        Memory memory = tape.MemoryBefore;
        for (int before = 0; before < row; before++)
        {
            (_, memory) = step(memory, tape.Readings[before], tape.CommandsAt(before), tape.Instants[before]);
        }

        return new RecalledTick(tape.Origin, memory, tape.Readings[row], tape.CommandsAt(row), tape.Instants[row]);
    }
}
