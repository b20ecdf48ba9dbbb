namespace PileController.Watch;

/// <summary>When the program was started since the machine was, and whether the last of these ended in order.</summary>
/// <param name="Boot">Mark of the machine's start; on another one the count begins anew.</param>
/// <param name="StartsMs">Starts that followed no orderly end, ms since the machine's start, oldest first.</param>
/// <param name="Running">Whether the program was started and has not ended in order.</param>
internal sealed record StartCount(string Boot, IReadOnlyList<long> StartsMs, bool Running)
{
    private const long HourMilliseconds = 3_600_000;

    /// <summary>What the last end could not switch off, a sentence each.</summary>
    public IReadOnlyList<string> LeftOn { get; init; } = [];

    /// <summary>Nothing is known.</summary>
    public static StartCount Empty { get; } = new("", [], false);

    /// <summary>How many starts of the last hour followed no orderly end.</summary>
    public int Restarts => StartsMs.Count;

    /// <summary>The count after a start now. Neither a jump of the clock nor a pulled plug counts as a restart.</summary>
    /// <param name="boot">Mark of the machine's start.</param>
    /// <param name="nowMs">Time since then.</param>
    public StartCount Started(string boot, long nowMs)
    {
        long[] kept = boot == Boot ? [.. StartsMs.Where(at => at <= nowMs && nowMs - at < HourMilliseconds)] : [];
        return new StartCount(boot, boot == Boot && Running ? [.. kept, nowMs] : kept, true);
    }

    /// <summary>The count after an end that was asked for. It was none in order where something is on still.</summary>
    /// <param name="leftOn">What could not be switched off, a sentence each.</param>
    public StartCount Ended(IReadOnlyList<string> leftOn) => this with { Running = leftOn.Count > 0, LeftOn = leftOn };
}
