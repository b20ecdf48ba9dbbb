using System.Text.Json;
using PileController.Control.Decisions;

namespace PileController.Records.Packing;

/// <summary>What goes with a batch of ticks and is not a column of numbers.</summary>
/// <param name="Origin">Who made it.</param>
/// <param name="MemoryBefore">What its first tick was given.</param>
/// <param name="MemoryAfter">What its last tick handed on.</param>
/// <param name="Commands">The commands, with the row of the tick at which they took effect.</param>
internal sealed record BatchText(
    RecordOrigin Origin, JsonElement MemoryBefore, JsonElement MemoryAfter, IReadOnlyList<CommandAt> Commands);

/// <summary>A command and the row of the batch at which it took effect.</summary>
internal sealed record CommandAt(int Row, Command Command);
