using System.Runtime.InteropServices;
using System.Text;
using Microsoft.Win32.SafeHandles;
using PileController.Records.Storage;

namespace PileController.Access;

/// <summary>Writes files that only their owner may read. Their owner is that of the folder, also when root writes them.</summary>
internal static class PrivateFile
{
    private const UnixFileMode OwnerOnly = UnixFileMode.UserRead | UnixFileMode.UserWrite;

    // statx(2): the same layout on every processor, unlike stat.
    private const int StatxBytes = 256;
    private const int UidAt = 20;
    private const int GidAt = 24;
    private const uint UidAndGid = 0x18;
    private const int FromCurrentFolder = -100;

    /// <summary>Writes a file anew: a cut leaves the old text or the new, never half of one.</summary>
    /// <exception cref="IOException">It cannot be written; the old one is as it was.</exception>
    /// <exception cref="UnauthorizedAccessException">The folder may not be written.</exception>
    public static void Replace(string file, string text)
    {
        string folder = Path.GetDirectoryName(Path.GetFullPath(file))!;

        // A name nobody can foresee, made new: in a folder of somebody else's a link could lie in wait for root.
        string fresh = $"{file}.{Guid.NewGuid():N}.new";
        FileStreamOptions options = new() { Mode = FileMode.CreateNew, Access = FileAccess.Write };
        if (!OperatingSystem.IsWindows())
        {
            options.UnixCreateMode = OwnerOnly;
        }

        try
        {
            using (FileStream stream = new(fresh, options))
            {
                if (OperatingSystem.IsLinux())
                {
                    HandOver(stream.SafeFileHandle, folder);
                }

                stream.Write(Encoding.UTF8.GetBytes(text));
                stream.Flush(flushToDisk: true);
            }

            File.Move(fresh, file, overwrite: true);
            FolderSync.Sync(folder);
        }
        catch
        {
            File.Delete(fresh);
            throw;
        }
    }

    /// <summary>Gives a new file to the folder's owner, where the caller is another and may.</summary>
    private static void HandOver(SafeFileHandle file, string folder)
    {
        if (GetUid() != 0)
        {
            return;
        }

        byte[] of = new byte[StatxBytes];
        if (Statx(FromCurrentFolder, folder, 0, UidAndGid, of) != 0
            || FChown(file, BitConverter.ToUInt32(of, UidAt), BitConverter.ToUInt32(of, GidAt)) != 0)
        {
            throw new IOException($"The file cannot be given to the owner of '{folder}' (error {Marshal.GetLastPInvokeError()}).");
        }
    }

    [DllImport("libc", EntryPoint = "geteuid")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern uint GetUid();

    [DllImport("libc", EntryPoint = "statx", SetLastError = true)]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int Statx(int at, [MarshalAs(UnmanagedType.LPUTF8Str)] string path, int flags, uint mask, [Out] byte[] into);

    [DllImport("libc", EntryPoint = "fchown", SetLastError = true)]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int FChown(SafeFileHandle file, uint uid, uint gid);
}
