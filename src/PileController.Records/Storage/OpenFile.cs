namespace PileController.Records.Storage;

/// <summary>What a file that is still written held for certain when this was noted; since then it may have got more.</summary>
/// <param name="Name">Its plain name.</param>
/// <param name="Span">What it held.</param>
internal sealed record OpenFile(string Name, FileSpan Span);
