using System.Runtime.InteropServices;
using System.Text.Json;
using PileController.Records.Packing;

namespace PileController.Records.Storage;

/// <summary>
/// The memories that the next lean frame of a tail may build on, as JSON. Who writes a tail and who reads it keep them
/// alike, frame by frame.
/// </summary>
/// <param name="Whole">What the newest whole frame handed on; null when there is none.</param>
/// <param name="Last">What the newest frame handed on; null when there is none, or it is lost.</param>
/// <param name="Lean">How many lean frames have come since the whole one.</param>
internal sealed record TailMemories(byte[]? Whole, byte[]? Last, int Lean)
{
    /// <summary>None: the next frame has to be whole.</summary>
    public static TailMemories None { get; } = new(null, null, 0);

    /// <summary>Those after a whole frame.</summary>
    public static TailMemories After(IReadOnlyList<PackedTicks> packs)
    {
        byte[]? last = packs.Count == 0 ? null : BytesOf(packs[^1].Batch.Text().MemoryAfter);
        return new TailMemories(last, last, 0);
    }

    /// <summary>A memory's JSON as it stands in its batch.</summary>
    public static byte[] BytesOf(JsonElement memory) => JsonMarshal.GetRawUtf8Value(memory).ToArray();
}
