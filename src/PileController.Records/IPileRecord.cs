using PileController.Control;
using PileController.Control.Decisions;
using PileController.Control.Modes;
using PileController.Control.Readings;
using PileController.Records.Accounts;
using PileController.Records.Checking;

namespace PileController.Records;

/// <summary>One tick as it is recorded: everything needed to show it and to run it again.</summary>
/// <param name="Raw">What the rig said, before validation (what control was given).</param>
/// <param name="Commands">The commands that took effect at this tick.</param>
/// <param name="MemoryBefore">What the tick was given from the one before.</param>
/// <param name="Decision">What was decided.</param>
/// <param name="MemoryAfter">What the tick handed on to the one after.</param>
public sealed record TickEntry(
    RigReadings Raw, IReadOnlyList<Command> Commands, Memory MemoryBefore, Decision Decision, Memory MemoryAfter);

/// <summary>One point of a down-sampled series. A bucket without a good reading is a gap: its numbers are null.</summary>
/// <param name="UtcMilliseconds">Start of the bucket.</param>
/// <param name="Least">Smallest good value in it.</param>
/// <param name="Mean">Mean of the good values.</param>
/// <param name="Most">Largest good value.</param>
/// <param name="Count">How many good values.</param>
public readonly record struct SeriesPoint(long UtcMilliseconds, double? Least, double? Mean, double? Most, int Count);

/// <summary>
/// One decision worth a line of its own. <c>HouseCelsius</c> is null when the house probe could not be believed.
/// </summary>
public sealed record DecisionLine(
    long Sequence, long UtcMilliseconds, DecisionKinds Kinds, Mode Mode, Curb Curb, double WantWatts, double MeansWatts,
    double GrantWatts, double WaterWatts, double ActiveZoneCelsius, double? HouseCelsius, string Why, string? Note);

/// <summary>How the record is.</summary>
/// <param name="Accepting">Ticks are being written.</param>
/// <param name="LastSequence">Last tick known to be safe on the disk; 0 for an empty record.</param>
/// <param name="QueuedTicks">Ticks waiting.</param>
/// <param name="DroppedTicks">Ticks dropped since the start because the store could not keep up or failed.</param>
/// <param name="Fault">What is wrong, in a sentence, or null.</param>
public sealed record RecordHealth(bool Accepting, long LastSequence, long QueuedTicks, long DroppedTicks, string? Fault)
{
    /// <summary>What of it is damaged, or null.</summary>
    public RecordDamage? Damage { get; init; }

    /// <summary>What is free for an ordinary user on the disk it lies on, bytes, quotas not counted; null where that is not known.</summary>
    public long? FreeBytes { get; init; }
}

/// <summary>
/// The record of ticks and decisions. <see cref="TryAppend"/> never blocks and never throws: control does not wait
/// for the store. Queries are safe from any thread and return finished lists.
/// </summary>
public interface IPileRecord : IAsyncDisposable
{
    /// <summary>Hands over one tick. False when it had to be dropped (counted in <see cref="Health"/>).</summary>
    bool TryAppend(TickEntry tick);

    /// <summary>Waits until all that was handed over so far is safe on the disk.</summary>
    /// <exception cref="IOException">The store fails now; what could not be written is kept and tried again.</exception>
    Task FlushAsync(CancellationToken cancellation);

    /// <summary>How the record is.</summary>
    RecordHealth Health { get; }

    /// <summary>What the last recorded tick handed on, to resume from; null for an empty record.</summary>
    Task<Memory?> LastMemoryAsync(CancellationToken cancellation);

    /// <summary>
    /// Some series, each oldest first, in buckets of <paramref name="stepMilliseconds"/> aligned to multiples of it.
    /// Buckets with no tick at all between two that have some are gaps: one point with nulls. Where summaries are
    /// narrow against the buckets, or single ticks are no longer kept, a point is made of summaries: its least and most
    /// are exact, and a summary counts whole in the bucket that holds its middle.
    /// </summary>
    /// <param name="series">Each a channel name as in <see cref="ChannelTable"/>, or one of the decision series: want,
    /// means, grant, waterDraw, waterError, airDraw, activeZone, setPoint, pumpDuty, valveOpening, blowerDuty,
    /// generation, mode.</param>
    /// <param name="fromUtcMilliseconds">First moment, inclusive.</param>
    /// <param name="toUtcMilliseconds">Last moment, exclusive.</param>
    /// <param name="stepMilliseconds">Bucket width; 0 for every tick.</param>
    /// <param name="cancellation">Cancels the query.</param>
    /// <returns>One list a series, in the order asked.</returns>
    /// <exception cref="ArgumentException">No such series.</exception>
    Task<IReadOnlyList<IReadOnlyList<SeriesPoint>>> SamplesAsync(
        IReadOnlyList<string> series, long fromUtcMilliseconds, long toUtcMilliseconds, long stepMilliseconds,
        CancellationToken cancellation);

    /// <summary>Decisions, newest first.</summary>
    /// <param name="ask">Which.</param>
    /// <param name="cancellation">Cancels the query.</param>
    Task<IReadOnlyList<DecisionLine>> DecisionsAsync(DecisionAsk ask, CancellationToken cancellation);

    /// <summary>
    /// What blocks of ticks came to, in the order of their numbers; however the clock went, each tick is in one block only.
    /// A damaged block is left out and told in <see cref="Health"/>.
    /// </summary>
    /// <param name="afterSequence">Ticks up to this number are left out; 0 for none.</param>
    /// <param name="mostBlocks">At most so many blocks, 1 or more; go on after the last tick of the last.</param>
    /// <param name="rulesOf">What ticks are held against, by the hash of the settings they were made with; called from the record's thread.</param>
    /// <param name="cancellation">Cancels the query.</param>
    Task<IReadOnlyList<BlockAccount>> AccountsAsync(
        long afterSequence, int mostBlocks, Func<string, AccountRules> rulesOf, CancellationToken cancellation);

    /// <summary>One tick as it can be decided again; null where it is not kept, damaged, or made with settings nobody knows.</summary>
    /// <param name="sequence">Its number.</param>
    /// <param name="steps">Finds control for a block's origin; called from the record's thread.</param>
    /// <param name="cancellation">Cancels the query.</param>
    Task<RecalledTick?> TickAsync(long sequence, ReplaySteps steps, CancellationToken cancellation);
}
