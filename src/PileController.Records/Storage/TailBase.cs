using System.Text.Json;

namespace PileController.Records.Storage;

/// <summary>What a tail begins after.</summary>
/// <param name="LastSequence">Last tick that the store held when the tail was begun; 0 when it held none.</param>
/// <param name="Memory">What that tick handed on, or the newest before it whose memory is not lost.</param>
internal sealed record TailBase(long LastSequence, JsonElement? Memory)
{
    /// <summary>What the files that are still written held then; an earlier build did not tell.</summary>
    public IReadOnlyList<OpenFile> OpenFiles { get; init; } = [];
}
