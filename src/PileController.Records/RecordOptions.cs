namespace PileController.Records;

/// <summary>Where the record is kept and how often it is made safe.</summary>
public sealed record RecordOptions
{
    /// <summary>The folder of the record; made when it is missing. One process at a time may write in it.</summary>
    public required string DataDirectory { get; init; }

    /// <summary>Who made the ticks; stored with every block.</summary>
    public RecordOrigin Origin { get; init; } = new("", "", "");

    /// <summary>Ticks at which a packed block is closed, 1 to 8640. Default 360: an hour of 10 s ticks.</summary>
    public int BlockTicks { get; init; } = 360;

    /// <summary>Steady ticks that may wait to be made safe, 1 to 360. Default 6: a minute of 10 s ticks.</summary>
    public int SyncTicks { get; init; } = 6;

    /// <summary>Ticks between two commits while history is written in bulk, 1 to 100,000. Default a day.</summary>
    public int BulkCommitTicks { get; init; } = 8640;

    /// <summary>Ticks after which a new file is begun, 30 to 10,000,000. Default 30 days.</summary>
    public int FileTicks { get; init; } = 259_200;

    /// <summary>
    /// Ticks that are summed up at a time, 10 to 8640. Default 8640: a day of 10 s ticks.
    /// </summary>
    public int DayTicks { get; init; } = 8640;

    /// <summary>Single ticks that are kept at least, 1 or more; older ones go by whole files. Default: all.</summary>
    public long KeepTicks { get; init; } = long.MaxValue;

    /// <summary>Ticks whose finest summaries are kept at least, 1 or more; older ones go by whole files. Default: all.</summary>
    public long KeepMinuteTicks { get; init; } = long.MaxValue;

    /// <summary>Ticks that may queue for the owner thread, 1 to 1,000,000.</summary>
    public int QueueTicks { get; init; } = 4096;

    /// <summary>Ticks kept in memory while the store fails; beyond them ticks are dropped and counted. 360 to 1,000,000.</summary>
    public int WaitingTicks { get; init; } = 25_920;

    /// <summary>Checks every figure.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Names the option, what was given and what is allowed.</exception>
    public void Check()
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(DataDirectory);
        Within(BlockTicks, 1, 8640, nameof(BlockTicks));
        Within(SyncTicks, 1, 360, nameof(SyncTicks));
        Within(BulkCommitTicks, 1, 100_000, nameof(BulkCommitTicks));
        Within(FileTicks, 30, 10_000_000, nameof(FileTicks));
        Within(DayTicks, 10, 8640, nameof(DayTicks));
        ArgumentOutOfRangeException.ThrowIfLessThan(KeepTicks, 1);
        ArgumentOutOfRangeException.ThrowIfLessThan(KeepMinuteTicks, 1);
        Within(QueueTicks, 1, 1_000_000, nameof(QueueTicks));
        Within(WaitingTicks, 360, 1_000_000, nameof(WaitingTicks));
    }

    private static void Within(int given, int least, int most, string name)
    {
        if (given < least || given > most)
        {
            throw new ArgumentOutOfRangeException(name, given, $"{name} is {given}; allowed is {least} to {most}.");
        }
    }
}

/// <summary>Who made a block of ticks.</summary>
/// <param name="SettingsHash">Hash of settings and calibration.</param>
/// <param name="Build">Version of the program.</param>
/// <param name="Platform">Processor and runtime.</param>
public sealed record RecordOrigin(string SettingsHash, string Build, string Platform);
