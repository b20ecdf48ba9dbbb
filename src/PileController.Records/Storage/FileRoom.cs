using System.Runtime.InteropServices;
using Microsoft.Win32.SafeHandles;

namespace PileController.Records.Storage;

/// <summary>
/// Room for a file that will grow by small appends, each of them synced. Where the blocks are its own already, ext4 writes
/// the file's inode to its journal with a sync and not the maps of free blocks besides. The class library sets room aside
/// only for a file it makes anew with other options than those needed here.
/// </summary>
internal static class FileRoom
{
    // FALLOC_FL_KEEP_SIZE: the length of the file stays what it is (fallocate(2)).
    private const int KeepSize = 1;

    /// <summary>Sets room aside where the system knows how. A file system that cannot, or is full, is no error.</summary>
    /// <param name="file">The open file.</param>
    /// <param name="bytes">How much, from the file's start; 0 for none.</param>
    public static void SetAside(SafeFileHandle file, long bytes)
    {
        if (bytes > 0 && OperatingSystem.IsLinux())
        {
            _ = Allocate(file, KeepSize, 0, (nint)bytes);
        }
    }

    [DllImport("libc", EntryPoint = "fallocate")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int Allocate(SafeFileHandle file, int mode, nint offset, nint bytes);
}
