namespace PileController.Records.Storage;

/// <summary>A real folder.</summary>
internal sealed class FolderDisk : IRecordDisk
{
    private const string QuarantineFolder = "quarantine";

    // What the system answers for a file that another process has locked: EWOULDBLOCK of Linux and macOS,
    // ERROR_SHARING_VIOLATION of Windows.
    private static readonly int[] HeldByAnother = [11, 35, unchecked((int)0x80070020)];
    private readonly string _folder;

    /// <summary>Makes the folder when it is missing.</summary>
    public FolderDisk(string folder)
    {
        _folder = Path.GetFullPath(folder);
        Directory.CreateDirectory(_folder);
    }

    /// <inheritdoc/>
    public IDisposable Lock()
    {
        try
        {
            return new FileStream(PathOf("lock"), FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None);
        }
        catch (IOException exception) when (HeldByAnother.Contains(exception.HResult))
        {
            throw new RecordInUseException(_folder, exception);
        }
    }

    /// <inheritdoc/>
    public Stream Open(string name)
    {
        bool made = !File.Exists(PathOf(name));
        SyncingFileStream stream = new(PathOf(name));
        if (made)
        {
            SyncNewName(stream, name);
        }

        return stream;
    }

    /// <inheritdoc/>
    public IReadOnlyList<string> Names() =>
        [.. Directory.EnumerateFiles(_folder).Select(path => Path.GetFileName(path)).Order(StringComparer.Ordinal)];

    /// <inheritdoc/>
    public void Rename(string from, string to)
    {
        File.Move(PathOf(from), PathOf(to), overwrite: true);
        FolderSync.Sync(_folder);
    }

    /// <inheritdoc/>
    public void Delete(string name) => File.Delete(PathOf(name));

    /// <inheritdoc/>
    public void Quarantine(string name)
    {
        string folder = Path.Combine(_folder, QuarantineFolder);
        Directory.CreateDirectory(folder);
        string target = Path.Combine(folder, name);
        for (int copy = 2; File.Exists(target); copy++)
        {
            target = Path.Combine(folder, $"{name}.{copy}");
        }

        File.Move(PathOf(name), target);
        FolderSync.Sync(_folder);
    }

    // A name that could not be made safe is taken back, so that the next attempt makes it anew.
    private void SyncNewName(Stream stream, string name)
    {
        try
        {
            FolderSync.Sync(_folder);
        }
        catch
        {
            stream.Dispose();
            Delete(name);
            throw;
        }
    }

    private string PathOf(string name) => Path.Combine(_folder, name);
}
