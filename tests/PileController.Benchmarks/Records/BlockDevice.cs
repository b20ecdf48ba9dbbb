using System.Globalization;
using System.Runtime.InteropServices;
using Microsoft.Win32.SafeHandles;

namespace PileController.Benchmarks.Records;

/// <summary>The block device under a folder, as Linux counts what is written to it, whoever writes.</summary>
internal sealed class BlockDevice : IDisposable
{
    // The seventh figure of a device's "stat" is sectors written; a sector is 512 bytes whatever the device
    // (Documentation/block/stat.rst of Linux).
    private const int SectorsWritten = 6;
    private const int SectorBytes = 512;
    private readonly string _stat;
    private readonly SafeFileHandle _anyFile;

    private BlockDevice(string name, string fileSystem, string stat, SafeFileHandle anyFile)
    {
        Name = name;
        FileSystem = fileSystem;
        _stat = stat;
        _anyFile = anyFile;
    }

    /// <summary>Its number, major and minor.</summary>
    public string Name { get; }

    /// <summary>The file system on it, and how it is mounted.</summary>
    public string FileSystem { get; }

    /// <summary>Bytes written to it since the system's start.</summary>
    public long WrittenBytes => SectorBytes * long.Parse(
        File.ReadAllText(_stat).Split(' ', StringSplitOptions.RemoveEmptyEntries)[SectorsWritten], CultureInfo.InvariantCulture);

    /// <summary>Finds the device a folder lies on.</summary>
    /// <exception cref="IOException">It lies on none whose writes are counted.</exception>
    public static BlockDevice Under(string folder)
    {
        // "id parent major:minor root mount-point options … - kind source options" (proc_pid_mountinfo(5)).
        string[] mount = File.ReadLines("/proc/self/mountinfo").Select(line => line.Split(' '))
            .Where(line => IsUnder(folder, line[4].Replace("\\040", " ", StringComparison.Ordinal)))
            .MaxBy(line => line[4].Length)!;
        string stat = $"/sys/dev/block/{mount[2]}/stat";
        string kind = mount[Array.IndexOf(mount, "-") + 1];
        return File.Exists(stat)
            ? new BlockDevice(mount[2], $"{kind} {mount[5]}", stat, File.OpenHandle(Path.Combine(folder, "beside"), FileMode.Create, FileAccess.Write))
            : throw new IOException($"DIR is '{folder}', which lies on {kind}: nothing counts what is written to it. Allowed: a folder on a block device.");
    }

    /// <summary>Writes out all that the file system has put off, as Linux does by itself within half a minute.</summary>
    /// <exception cref="IOException">The system refused.</exception>
    public void WriteOut()
    {
        if (SyncFileSystem(_anyFile) != 0)
        {
            throw new IOException($"The file system cannot be written out (error {Marshal.GetLastPInvokeError()}).");
        }
    }

    /// <inheritdoc/>
    public void Dispose() => _anyFile.Dispose();

    private static bool IsUnder(string folder, string mountPoint) =>
        mountPoint == "/" || folder == mountPoint || folder.StartsWith(mountPoint + "/", StringComparison.Ordinal);

    [DllImport("libc", EntryPoint = "syncfs", SetLastError = true)]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int SyncFileSystem(SafeFileHandle file);
}
