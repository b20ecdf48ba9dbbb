namespace PileController.Records.Tests.PowerCuts;

/// <summary>
/// What a drive holds whose power goes: all that was flushed, and of what was written since each sector or not, by
/// chance, in whatever order. The file system's own first block is kept or lost whole, which ext4 takes for granted: with
/// half of it on the drive nothing mounts before a repair, whatever lies on it. Cuts are asked for in the order of the log.
/// </summary>
/// <param name="before">What was on the drive before the log begins; changed.</param>
/// <param name="events">The log.</param>
/// <param name="safe">Last tick that was there already.</param>
internal sealed class CutDrive(byte[] before, IReadOnlyList<DriveEvent> events, long safe)
{
    private const int SectorBytes = 512;

    // The superblock: 1,024 bytes, 1,024 bytes from the start (ext4 data structures, Linux kernel documentation).
    private const long SuperblockAt = 1024;
    private const int SuperblockBytes = 1024;
    private readonly List<DriveEvent> _unflushed = [];
    private int _next;

    /// <summary>Last tick handed over before the cut.</summary>
    public long Taken { get; private set; } = safe;

    /// <summary>Last tick acknowledged before the cut.</summary>
    public long Safe { get; private set; } = safe;

    /// <summary>The drive after a cut before event <paramref name="cut"/>.</summary>
    public byte[] At(int cut, Random random)
    {
        for (; _next < cut; _next++)
        {
            Live(events[_next]);
        }

        byte[] after = (byte[])before.Clone();
        foreach (DriveEvent write in _unflushed)
        {
            int length;
            for (int at = 0; at < write.Bytes.Length; at += length)
            {
                int whole = write.Number + at == SuperblockAt ? SuperblockBytes : SectorBytes;
                length = Math.Min(whole, write.Bytes.Length - at);
                if (random.Next(2) != 0)
                {
                    write.Bytes.AsSpan(at, length).CopyTo(after.AsSpan((int)write.Number + at));
                }
            }
        }

        return after;
    }

    private void Live(DriveEvent happened)
    {
        switch (happened.Kind)
        {
            case DriveEventKind.Write:
                _unflushed.Add(happened);
                break;
            case DriveEventKind.Flush:
                foreach (DriveEvent write in _unflushed)
                {
                    write.Bytes.CopyTo(before.AsSpan((int)write.Number));
                }

                _unflushed.Clear();
                break;
            case DriveEventKind.Taken:
                Taken = happened.Number;
                break;
            default:
                Safe = happened.Number;
                break;
        }
    }
}
