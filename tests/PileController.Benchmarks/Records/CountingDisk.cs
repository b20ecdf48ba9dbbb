using PileController.Records.Storage;

namespace PileController.Benchmarks.Records;

/// <summary>A folder that counts what the record does to it.</summary>
internal sealed class CountingDisk(FolderDisk inner) : IRecordDisk
{
    /// <summary>How often the tail was replaced: once a commit to the store.</summary>
    public int Commits { get; private set; }

    public IDisposable Lock() => inner.Lock();

    public IDisposable? TryClaim() => inner.TryClaim();

    public IDisposable KeepStill() => inner.KeepStill();

    public Stream OpenToRead(string name) => inner.OpenToRead(name);

    public Stream Open(string name) => inner.Open(name);

    public Stream Open(string name, long roomBytes) => inner.Open(name, roomBytes);

    public IReadOnlyList<string> Names() => inner.Names();

    public void Rename(string from, string to)
    {
        Commits += to == TailFile.Name ? 1 : 0;
        inner.Rename(from, to);
    }

    public void Delete(string name) => inner.Delete(name);

    public void Quarantine(string name) => inner.Quarantine(name);

    public IReadOnlyList<SetAsideFile> SetAside() => inner.SetAside();

    public long? FreeBytes() => inner.FreeBytes();
}
