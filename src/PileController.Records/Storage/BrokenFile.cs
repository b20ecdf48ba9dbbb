namespace PileController.Records.Storage;

/// <summary>A file that could not be opened.</summary>
/// <param name="Name">Its plain name.</param>
/// <param name="Reason">Why.</param>
/// <param name="IsGone">True when there is none, and nothing could be set aside.</param>
internal sealed record BrokenFile(string Name, string Reason, bool IsGone = false)
{
    /// <inheritdoc/>
    public override string ToString() => $"{Name}: {Reason}";
}
