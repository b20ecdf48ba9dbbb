namespace PileController.Records.Tests.Storage;

/// <summary>A file with what is certainly on the disk and what was written since.</summary>
internal sealed class SimulatedFile
{
    private const int SectorBytes = 512;
    private readonly List<(long At, byte[] Bytes)> _unflushed = [];
    private byte[] _durable = [];
    private int _durableLength;
    private int _length;
    private byte[] _now = [];

    /// <summary>The file as a running process sees it.</summary>
    public byte[] Now => _now[.._length];

    public int Length => _length;

    /// <summary>Bytes that were read of it.</summary>
    public long ReadBytes { get; private set; }

    public static SimulatedFile Of(byte[] bytes) => new()
    {
        _durable = [.. bytes],
        _durableLength = bytes.Length,
        _now = bytes,
        _length = bytes.Length,
    };

    public int Read(long at, Span<byte> to)
    {
        int count = (int)Math.Clamp(_length - at, 0, to.Length);
        _now.AsSpan((int)at, count).CopyTo(to);
        ReadBytes += count;
        return count;
    }

    /// <summary>Writes and remembers each sector by itself: any of them may be lost.</summary>
    public void Write(long at, ReadOnlySpan<byte> bytes)
    {
        Put(ref _now, ref _length, at, bytes);
        while (!bytes.IsEmpty)
        {
            int part = (int)Math.Min(SectorBytes - (at % SectorBytes), bytes.Length);
            _unflushed.Add((at, bytes[..part].ToArray()));
            at += part;
            bytes = bytes[part..];
        }
    }

    // A change of length is taken to be durable at once or with the next flush: both happen in AfterCut by the sectors.
    public void SetLength(int length)
    {
        Cut(ref _now, ref _length, length);
        _unflushed.Add((length, []));
    }

    // Only what was written since is copied: a run flushes a thousand times.
    public void Flush()
    {
        foreach ((long at, byte[] sector) in _unflushed)
        {
            Apply(ref _durable, ref _durableLength, at, sector);
        }

        _unflushed.Clear();
    }

    public SimulatedFile AfterCut(Random random)
    {
        byte[] bytes = _durable[.._durableLength];
        int length = bytes.Length;
        foreach ((long at, byte[] sector) in _unflushed)
        {
            if (random.Next(2) != 0)
            {
                Apply(ref bytes, ref length, at, sector);
            }
        }

        return Of(bytes[..length]);
    }

    private static void Apply(ref byte[] file, ref int length, long at, byte[] sector)
    {
        if (sector.Length == 0)
        {
            Cut(ref file, ref length, (int)at);
        }
        else
        {
            Put(ref file, ref length, at, sector);
        }
    }

    private static void Cut(ref byte[] file, ref int length, int to)
    {
        if (to > file.Length)
        {
            Array.Resize(ref file, to);
        }
        else
        {
            file.AsSpan(to).Clear();
        }

        length = to;
    }

    private static void Put(ref byte[] file, ref int length, long at, ReadOnlySpan<byte> bytes)
    {
        int end = (int)at + bytes.Length;
        if (end > file.Length)
        {
            Array.Resize(ref file, Math.Max(end, file.Length * 2));
        }

        bytes.CopyTo(file.AsSpan((int)at));
        length = Math.Max(length, end);
    }
}
