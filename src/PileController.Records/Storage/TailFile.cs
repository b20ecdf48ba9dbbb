using PileController.Records.Packing;

namespace PileController.Records.Storage;

/// <summary>
/// The append-only file that makes ticks safe until the store has them. It is replaced whole by one that begins
/// where the store ends, so there is a sound tail at every moment.
/// </summary>
/// <threadsafety>One thread at a time.</threadsafety>
internal sealed class TailFile : IDisposable
{
    public const string Name = "tail";
    private const string NewName = "tail.new";

    // An hour of ticks with all channels comes to less.
    private const long RoomBytes = 512 * 1024;

    // Where a whole frame is damaged, what is built on it is lost: the memories of ten minutes.
    private const int MostLean = 9;
    private readonly IRecordDisk _disk;
    private Stream? _stream;
    private TailMemories _known = TailMemories.None;
    private long _soundBytes;
    private TailBase? _owed;

    private TailFile(IRecordDisk disk, TailContents found)
    {
        _disk = disk;
        Found = found;
        _soundBytes = found.SoundBytes;
    }

    /// <summary>What was in it when it was opened.</summary>
    public TailContents Found { get; }

    /// <summary>Reads the tail and cuts off a torn end. A damaged tail is copied to quarantine before it is used.</summary>
    public static TailFile Open(IRecordDisk disk)
    {
        disk.Delete(NewName);
        byte[] bytes = ReadSafely(disk);
        TailFile tail = new(disk, TailContents.Of(bytes));
        if (tail.Found.DamagedPlaces > 0)
        {
            tail.SetAside(bytes);
        }

        return tail;
    }

    /// <summary>Reads the tail and changes nothing.</summary>
    public static TailContents Peek(IRecordDisk disk) =>
        TailContents.Of(disk.Names().Contains(Name) ? ReadAll(disk.OpenToRead(Name)) : []);

    /// <summary>Appends one frame and waits until it is safe.</summary>
    /// <exception cref="IOException">It is not; nothing was appended.</exception>
    public void Append(IReadOnlyList<PackedTicks> packs)
    {
        // A renaming that failed half way may be undone by a power cut, and what is appended then with it.
        if (_owed is { } start)
        {
            Restart(start);
        }

        (byte[] frame, TailMemories after) = TailFrame.Of(packs, _soundBytes, _known, MostLean);
        _stream ??= _disk.Open(Name);
        // What an attempt that failed may have left behind goes first.
        if (_stream.Length != _soundBytes)
        {
            _stream.SetLength(_soundBytes);
        }

        _stream.Position = _soundBytes;
        _stream.Write(frame);
        _stream.Flush();
        _soundBytes += frame.Length;
        _known = after;
    }

    /// <summary>Begins anew after <paramref name="start"/>, which the store holds safely.</summary>
    public void Restart(TailBase start)
    {
        _owed = start;
        _known = TailMemories.None;
        byte[] frame = TailFrame.Of(start);
        _disk.Delete(NewName);
        using (Stream fresh = _disk.Open(NewName, RoomBytes))
        {
            fresh.Write(frame);
            fresh.Flush();
        }

        _stream?.Dispose();
        _stream = null;
        _disk.Rename(NewName, Name);
        _soundBytes = frame.Length;
        _owed = null;
    }

    /// <inheritdoc/>
    public void Dispose() => _stream?.Dispose();

    private void SetAside(byte[] bytes)
    {
        const string copyName = "tail.damaged";
        using (Stream copy = _disk.Open(copyName))
        {
            copy.SetLength(0);
            copy.Write(bytes);
            copy.Flush();
        }

        _disk.Quarantine(copyName);
    }

    // A process that was killed may have left its last frame unsynced; from here on it counts.
    private static byte[] ReadSafely(IRecordDisk disk)
    {
        Stream stream = disk.Open(Name, RoomBytes);
        stream.Flush();
        return ReadAll(stream);
    }

    private static byte[] ReadAll(Stream stream)
    {
        using (stream)
        {
            byte[] bytes = new byte[stream.Length];
            stream.ReadExactly(bytes);
            return bytes;
        }
    }
}
