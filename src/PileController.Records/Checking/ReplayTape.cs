using System.Text.Json;
using PileController.Control;
using PileController.Control.Decisions;
using PileController.Control.Readings;
using PileController.Records.Packing;

namespace PileController.Records.Checking;

/// <summary>A batch unpacked to be run again.</summary>
internal sealed record ReplayTape(
    PackedBatch Batch, RecordOrigin Origin, Memory MemoryBefore, string MemoryAfter,
    RigReadings[] Readings, Instant[] Instants, long[] Digests, ILookup<int, Command> Commands)
{
    /// <summary>How many ticks.</summary>
    public int Count => Batch.Count;

    /// <summary>Unpacks a batch.</summary>
    /// <exception cref="InvalidDataException">It is damaged.</exception>
    public static ReplayTape Of(PackedBatch batch)
    {
        BatchText text = batch.Text();
        return new ReplayTape(
            batch, text.Origin, RecordJson.ToMemory(text.MemoryBefore), text.MemoryAfter.GetRawText(),
            batch.RawReadings(), batch.Instants(), batch.Column(TickColumns.Digest),
            text.Commands.ToLookup(command => command.Row, command => command.Command));
    }

    /// <summary>
    /// What was handed on, as this build tells it: an earlier one may have told less, and what it left out is what is usual.
    /// </summary>
    public string MemoryAfterToldNow()
    {
        try
        {
            return JsonSerializer.Deserialize<Memory>(MemoryAfter, RecordJson.Options) is { } memory
                ? RecordJson.Of(memory).GetRawText()
                : MemoryAfter;
        }
        catch (JsonException)
        {
            return MemoryAfter;
        }
    }

    /// <summary>The commands that took effect at one tick.</summary>
    public IReadOnlyList<Command> CommandsAt(int row) => Commands.Contains(row) ? [.. Commands[row]] : [];
}
