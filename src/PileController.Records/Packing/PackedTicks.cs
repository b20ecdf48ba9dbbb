namespace PileController.Records.Packing;

/// <summary>A packed batch with the lines of its decisions, as it travels from memory to the tail and the store.</summary>
/// <param name="Batch">The ticks.</param>
/// <param name="Lines">The lines of those that are worth one, or null when none is.</param>
internal sealed record PackedTicks(PackedBatch Batch, PackedLines? Lines);
