using System.IO.Hashing;

namespace PileController.Records.Backups;

/// <summary>Copies single files and takes their checksums.</summary>
internal static class FileCopy
{
    private const int PieceBytes = 128 * 1024;

    /// <summary>Copies a file that another process may have open, and waits until the copy is safe.</summary>
    /// <param name="fromFolder">Folder it is in.</param>
    /// <param name="toFolder">Folder it goes to; made when it is missing.</param>
    /// <param name="name">Its path in both.</param>
    public static BackupFile Copy(string fromFolder, string toFolder, string name)
    {
        string target = Path.Combine(toFolder, name);
        Directory.CreateDirectory(Path.GetDirectoryName(target)!);
        using FileStream to = new(target, FileMode.CreateNew, FileAccess.Write, FileShare.None, bufferSize: 0);
        (long bytes, string crc) = Measure(Path.Combine(fromFolder, name), to);
        to.Flush(flushToDisk: true);
        return new BackupFile(name, bytes, crc);
    }

    /// <summary>Length and checksum of a file.</summary>
    public static (long Bytes, string Crc32) Measure(string path) => Measure(path, Stream.Null);

    private static (long Bytes, string Crc32) Measure(string path, Stream to)
    {
        using FileStream from = new(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete, bufferSize: 0);
        Crc32 crc = new();
        byte[] piece = new byte[PieceBytes];
        long bytes = 0;
        int read;
        while ((read = from.Read(piece)) > 0)
        {
            crc.Append(piece.AsSpan(0, read));
            to.Write(piece, 0, read);
            bytes += read;
        }

        return (bytes, crc.GetCurrentHashAsUInt32().ToString("x8"));
    }
}
