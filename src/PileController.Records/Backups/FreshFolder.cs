using PileController.Records.Storage;

namespace PileController.Records.Backups;

/// <summary>
/// A folder that is made aside and gets its name only when it is whole. One that never got so far is taken away again.
/// </summary>
internal sealed class FreshFolder : IDisposable
{
    private readonly string _target;
    private bool _whole;

    /// <summary>Begins one.</summary>
    /// <param name="target">The path it is to have.</param>
    /// <param name="ending">What its path ends with until then.</param>
    /// <exception cref="IOException">One that was cut off is still there, or the folder cannot be made.</exception>
    public FreshFolder(string target, string ending)
    {
        _target = target;
        Path = target + ending;
        if (Directory.Exists(Path))
        {
            throw new IOException($"'{Path}' is left from an attempt that was cut off: remove it first.");
        }

        Directory.CreateDirectory(Path);
    }

    /// <summary>Where it is while it is made.</summary>
    public string Path { get; }

    /// <summary>Whether a folder is missing or has nothing in it but what readers and writers hold.</summary>
    public static bool IsFree(string folder) =>
        !Directory.Exists(folder)
        || Directory.EnumerateFileSystemEntries(folder).All(path => IsHold(System.IO.Path.GetFileName(path)));

    /// <summary>Makes all names in it safe and gives it its own.</summary>
    public void Finish()
    {
        File.Delete(System.IO.Path.Combine(Path, FolderDisk.StillName));
        foreach (string folder in Directory.EnumerateDirectories(Path, "*", SearchOption.AllDirectories))
        {
            FolderSync.Sync(folder);
        }

        FolderSync.Sync(Path);
        if (Directory.Exists(_target))
        {
            RemoveFree(_target);
        }

        Directory.Move(Path, _target);
        _whole = true;
        FolderSync.Sync(System.IO.Path.GetDirectoryName(_target)!);
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        if (!_whole && Directory.Exists(Path))
        {
            Directory.Delete(Path, recursive: true);
        }
    }

    private static void RemoveFree(string folder)
    {
        foreach (string hold in Directory.EnumerateFiles(folder).Where(path => IsHold(System.IO.Path.GetFileName(path))))
        {
            File.Delete(hold);
        }

        try
        {
            Directory.Delete(folder);
        }
        catch (IOException exception)
        {
            throw new IOException(
                $"'{folder}' cannot be replaced ({exception.Message.TrimEnd('.')}); name a folder that is not there yet.", exception);
        }
    }

    private static bool IsHold(string name) => name is FolderDisk.LockName or FolderDisk.StillName;
}
