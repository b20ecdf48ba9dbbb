using System.Diagnostics;

namespace PileController.Records.Storage;

/// <summary>A real folder.</summary>
internal sealed class FolderDisk : IRecordDisk
{
    /// <summary>Name of the folder for what was set aside.</summary>
    public const string QuarantineFolder = "quarantine";

    /// <summary>Name of the file that the one writing process holds.</summary>
    public const string LockName = "lock";

    /// <summary>Name of the file that readers hold together, or the writer alone while it changes the store.</summary>
    public const string StillName = "still";

    // What the system answers for a file that another process has locked: EWOULDBLOCK of Linux and macOS,
    // ERROR_SHARING_VIOLATION of Windows.
    private static readonly int[] HeldByAnother = [11, 35, unchecked((int)0x80070020)];

    // A commit takes well under a second, on a slow card some.
    private static readonly TimeSpan LongestChange = TimeSpan.FromSeconds(20);
    private static readonly TimeSpan Pause = TimeSpan.FromMilliseconds(20);
    private readonly string _folder;
    private readonly TimeProvider _time;

    /// <summary>Makes the folder when it is missing.</summary>
    /// <param name="folder">The folder.</param>
    /// <param name="time">The clock that dates what is set aside; null for the system's.</param>
    public FolderDisk(string folder, TimeProvider? time = null)
    {
        _time = time ?? TimeProvider.System;
        _folder = Path.GetFullPath(folder);
        Directory.CreateDirectory(_folder);
    }

    /// <inheritdoc/>
    public IDisposable Lock()
    {
        try
        {
            FileStream held = new(PathOf(LockName), FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None);

            // Readers take a missing file to mean that nobody writes.
            OpenStill(FileShare.ReadWrite).Dispose();
            return held;
        }
        catch (IOException exception) when (HeldByAnother.Contains(exception.HResult))
        {
            throw new RecordInUseException(_folder, exception);
        }
    }

    /// <inheritdoc/>
    public IDisposable? TryClaim()
    {
        try
        {
            return OpenStill(FileShare.None);
        }
        catch (IOException exception) when (HeldByAnother.Contains(exception.HResult))
        {
            return null;
        }
    }

    /// <inheritdoc/>
    public IDisposable KeepStill()
    {
        long began = Stopwatch.GetTimestamp();
        while (true)
        {
            try
            {
                return OpenStill(FileShare.Read);
            }
            catch (IOException exception) when (HeldByAnother.Contains(exception.HResult))
            {
                if (Stopwatch.GetElapsedTime(began) > LongestChange)
                {
                    throw new RecordInUseException(_folder, exception);
                }

                Thread.Sleep(Pause);
            }
            catch (Exception exception) when (exception is UnauthorizedAccessException or IOException && !File.Exists(PathOf(StillName)))
            {
                // Whoever writes makes this file first: where it is missing and may not be made, as on a medium that
                // can only be read, nobody writes.
                return Stream.Null;
            }
        }
    }

    /// <inheritdoc/>
    public Stream OpenToRead(string name) =>
        new FileStream(PathOf(name), FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);

    /// <inheritdoc/>
    public Stream Open(string name) => Open(name, roomBytes: 0);

    /// <inheritdoc/>
    public Stream Open(string name, long roomBytes)
    {
        bool made = !File.Exists(PathOf(name));
        SyncingFileStream stream = new(PathOf(name));
        if (made)
        {
            FileRoom.SetAside(stream.SafeFileHandle, roomBytes);
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

        // Its own last change says nothing; that it was set aside is what a person looks for.
        File.SetLastWriteTimeUtc(target, _time.GetUtcNow().UtcDateTime);
        FolderSync.Sync(folder);
        FolderSync.Sync(_folder);
    }

    /// <inheritdoc/>
    public IReadOnlyList<SetAsideFile> SetAside()
    {
        DirectoryInfo folder = new(Path.Combine(_folder, QuarantineFolder));
        return folder.Exists
            ? [.. folder.EnumerateFiles().Select(file => new SetAsideFile(file.Name, new DateTimeOffset(file.LastWriteTimeUtc).ToUnixTimeMilliseconds()))]
            : [];
    }

    /// <inheritdoc/>
    public long? FreeBytes()
    {
        try
        {
            return new DriveInfo(_folder).AvailableFreeSpace;
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException or ArgumentException or ArithmeticException)
        {
            return null;
        }
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

    // Opened for reading by both sides, so that it does not matter which user made it.
    private FileStream OpenStill(FileShare share) =>
        new(PathOf(StillName), FileMode.OpenOrCreate, FileAccess.Read, share);

    private string PathOf(string name) => Path.Combine(_folder, name);
}
