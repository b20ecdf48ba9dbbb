using System.Text.Json;

namespace PileController.Records.Packing;

/// <summary>A packed batch with the lines of its decisions, as it travels from memory to the tail and the store.</summary>
/// <param name="Batch">The ticks.</param>
/// <param name="Lines">The lines of those that are worth one, or null when none is.</param>
internal sealed record PackedTicks(PackedBatch Batch, PackedLines? Lines)
{
    /// <summary>The newest memory that some batches handed on, or null when all of them are lost.</summary>
    public static JsonElement? NewestMemory(IReadOnlyList<PackedTicks> packs) =>
        packs.Reverse().Select(pack => pack.Batch.Text().HandedOn).FirstOrDefault(memory => memory is not null);
}
