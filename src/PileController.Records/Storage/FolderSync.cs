using System.Runtime.InteropServices;

namespace PileController.Records.Storage;

/// <summary>
/// Makes new and renamed file names safe. On Linux a name is part of its folder, which has to be synced by itself
/// (fsync(2): "Calling fsync() does not necessarily ensure that the entry in the directory ... has also reached
/// disk"); the class library has no call for it.
/// </summary>
public static class FolderSync
{
    private const int ReadOnly = 0;

    /// <summary>Syncs a folder where the system needs it.</summary>
    /// <exception cref="IOException">The system refused.</exception>
    public static void Sync(string folder)
    {
        if (!OperatingSystem.IsLinux())
        {
            return;
        }

        int handle = OpenPath(folder, ReadOnly);
        if (handle < 0)
        {
            throw new IOException($"The folder '{folder}' cannot be opened to be synced (error {Marshal.GetLastPInvokeError()}).");
        }

        try
        {
            if (SyncHandle(handle) != 0)
            {
                throw new IOException($"The folder '{folder}' cannot be synced (error {Marshal.GetLastPInvokeError()}).");
            }
        }
        finally
        {
            _ = CloseHandle(handle);
        }
    }

    [DllImport("libc", EntryPoint = "open", SetLastError = true)]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int OpenPath([MarshalAs(UnmanagedType.LPUTF8Str)] string path, int flags);

    [DllImport("libc", EntryPoint = "fsync", SetLastError = true)]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int SyncHandle(int handle);

    [DllImport("libc", EntryPoint = "close", SetLastError = true)]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int CloseHandle(int handle);
}
