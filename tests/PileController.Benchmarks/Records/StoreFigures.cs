namespace PileController.Benchmarks.Records;

/// <summary>What a store took to keep some days of ticks. Megabytes are 1e6 bytes.</summary>
internal sealed record StoreFigures
{
    public required string What { get; init; }

    public required int Days { get; init; }

    public required double FileMegabytes { get; init; }

    public required double WrittenMegabytesPerDay { get; init; }

    /// <summary>Syncs that made ticks safe.</summary>
    public required double FramesPerDay { get; init; }

    public required double CommitsPerDay { get; init; }

    /// <summary>Resident memory at the end less that after a twelfth of the days, both after a full collection.</summary>
    public required double MemoryGrowthMegabytes { get; init; }

    /// <summary>Over all of it, the making of the ticks included.</summary>
    public required double TicksPerSecond { get; init; }

    /// <summary>Time of each question, ms.</summary>
    public required IReadOnlyDictionary<string, QuestionTime> Questions { get; init; }
}

/// <summary>How long a question took, ms.</summary>
/// <param name="First">The first call after the store was opened.</param>
/// <param name="Warm">Median of the calls after it.</param>
/// <param name="Longest">Longest of those.</param>
/// <param name="Answer">How much came back.</param>
internal sealed record QuestionTime(double First, double Warm, double Longest, string Answer);
