namespace PileController.Benchmarks.Records;

/// <summary>A folder on a real disk for a run, gone afterwards unless somebody named it.</summary>
internal sealed class TrialDisk : IDisposable
{
    private static readonly string[] InMemory = ["tmpfs", "ramfs"];
    private readonly bool _passing;

    private TrialDisk(string path, bool passing)
    {
        Path = path;
        _passing = passing;
    }

    /// <summary>The folder.</summary>
    public string Path { get; }

    /// <summary>Makes the folder.</summary>
    /// <param name="given">Where; null for one in the user's cache.</param>
    /// <exception cref="IOException">It does not lie on a disk, or there is something in it already.</exception>
    public static TrialDisk Open(string? given)
    {
        string path = System.IO.Path.GetFullPath(given ?? System.IO.Path.Combine(
            Environment.GetEnvironmentVariable("XDG_CACHE_HOME") is { Length: > 0 } cache
                ? cache
                : System.IO.Path.Combine(Environment.GetFolderPath(Environment.SpecialFolder.UserProfile), ".cache"),
            $"pile-record-year-{Environment.ProcessId}"));
        Directory.CreateDirectory(path);
        string format = new DriveInfo(path).DriveFormat;
        if (InMemory.Contains(format))
        {
            throw new IOException($"DIR is '{path}', which is {format}: memory, not a disk. Allowed: a folder on a disk, ext4 for figures to compare.");
        }

        return Directory.EnumerateFileSystemEntries(path).Any()
            ? throw new IOException($"DIR is '{path}', which is not empty. Allowed: a new or empty folder.")
            : new TrialDisk(path, given is null);
    }

    /// <summary>A folder in it.</summary>
    public string Folder(string name) => Directory.CreateDirectory(System.IO.Path.Combine(Path, name)).FullName;

    /// <summary>The megabytes, 1e6 bytes, of a folder in it.</summary>
    public double Megabytes(string name) =>
        new DirectoryInfo(System.IO.Path.Combine(Path, name)).EnumerateFiles("*", SearchOption.AllDirectories).Sum(file => file.Length) / 1e6;

    /// <inheritdoc/>
    public void Dispose()
    {
        if (_passing)
        {
            Directory.Delete(Path, recursive: true);
        }
    }
}
