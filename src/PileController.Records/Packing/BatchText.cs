using System.Text.Json;
using PileController.Control.Decisions;

namespace PileController.Records.Packing;

/// <summary>What goes with a batch of ticks and is not a column of numbers.</summary>
/// <param name="Origin">Who made it.</param>
/// <param name="MemoryBefore">What its first tick was given.</param>
/// <param name="MemoryAfter">What its last tick handed on.</param>
/// <param name="Commands">The commands, with the row of the tick at which they took effect.</param>
internal sealed record BatchText(
    RecordOrigin Origin, JsonElement MemoryBefore, JsonElement MemoryAfter, IReadOnlyList<CommandAt> Commands)
{
    /// <summary>Stands for a memory that went with a damaged frame of the tail, and in the text of its ticks for good.</summary>
    public static JsonElement Lost { get; } = JsonSerializer.SerializeToElement<object?>(null);

    /// <summary>Whether what its first tick was given is lost: it cannot be decided again.</summary>
    public bool IsBeforeLost => IsLost(MemoryBefore);

    /// <summary>Whether one of the two memories is lost.</summary>
    public bool IsAnyLost => IsBeforeLost || IsLost(MemoryAfter);

    /// <summary>What its last tick handed on, or null when that is lost.</summary>
    public JsonElement? HandedOn => IsLost(MemoryAfter) ? null : MemoryAfter;

    private static bool IsLost(JsonElement memory) => memory.ValueKind == JsonValueKind.Null;
}

/// <summary>A command and the row of the batch at which it took effect.</summary>
internal sealed record CommandAt(int Row, Command Command);
