using System.IO.Hashing;

namespace PileController.Records.Storage;

/// <summary>A file that will not be written again.</summary>
/// <param name="Name">Its plain name.</param>
/// <param name="Bytes">Its length.</param>
/// <param name="Crc">CRC-32 of all of it.</param>
/// <param name="Span">What it holds.</param>
internal sealed record ClosedFile(string Name, long Bytes, uint Crc, FileSpan Span)
{
    /// <summary>Reads a whole file that nobody has open.</summary>
    public static ClosedFile Of(IRecordDisk disk, string name, FileSpan span)
    {
        using Stream stream = disk.Open(name);
        return new ClosedFile(name, stream.Length, CrcOf(stream), span);
    }

    /// <summary>Compares its length.</summary>
    /// <exception cref="InvalidDataException">It is not what it was.</exception>
    public void CheckLength(IRecordDisk disk)
    {
        using Stream stream = disk.Open(Name);
        if (stream.Length != Bytes)
        {
            throw new InvalidDataException($"it has {stream.Length} bytes; when it was closed it had {Bytes}");
        }
    }

    /// <summary>Compares its checksum.</summary>
    /// <exception cref="InvalidDataException">It does not fit.</exception>
    public void CheckSum(IRecordDisk disk)
    {
        using Stream stream = disk.Open(Name);
        if (CrcOf(stream) != Crc)
        {
            throw new InvalidDataException("It does not match the checksum noted when it was closed.");
        }
    }

    private static uint CrcOf(Stream stream)
    {
        Crc32 crc = new();
        crc.Append(stream);
        return crc.GetCurrentHashAsUInt32();
    }
}
