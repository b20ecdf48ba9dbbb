namespace PileController.Records.Storage;

/// <summary>A folder as a reader sees it: what is written to its files is kept in memory and forgotten.</summary>
/// <threadsafety>Called by one thread at a time.</threadsafety>
internal sealed class StillDisk(IRecordDisk inner) : IRecordDisk
{
    /// <inheritdoc/>
    public Stream Open(string name) =>
        inner.Names().Contains(name) ? new ForgettingStream(inner.OpenToRead(name)) : new MemoryStream();

    /// <inheritdoc/>
    public Stream OpenToRead(string name) => inner.OpenToRead(name);

    /// <inheritdoc/>
    public IReadOnlyList<string> Names() => inner.Names();

    /// <inheritdoc/>
    public IReadOnlyList<SetAsideFile> SetAside() => inner.SetAside();

    /// <inheritdoc/>
    public long? FreeBytes() => inner.FreeBytes();

    /// <inheritdoc/>
    public IDisposable KeepStill() => inner.KeepStill();

    /// <inheritdoc/>
    public IDisposable Lock() => throw Refused();

    /// <inheritdoc/>
    public IDisposable? TryClaim() => throw Refused();

    /// <inheritdoc/>
    public void Rename(string from, string to) => throw Refused();

    /// <inheritdoc/>
    public void Delete(string name) => throw Refused();

    /// <inheritdoc/>
    public void Quarantine(string name) => throw Refused();

    private static InvalidOperationException Refused() => new("A record that is only read cannot be changed.");
}
