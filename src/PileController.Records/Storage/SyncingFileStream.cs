namespace PileController.Records.Storage;

/// <summary>A file whose <see cref="Flush()"/> reaches the disk itself, not only the operating system.</summary>
internal sealed class SyncingFileStream(string path)
    : FileStream(path, FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.Read, bufferSize: 0)
{
    /// <inheritdoc/>
    public override void Flush() => Flush(flushToDisk: true);
}
