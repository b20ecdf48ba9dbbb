using System.Threading.Channels;
using PileController.Control;
using PileController.Control.Decisions;
using PileController.Control.Readings;
using PileController.Records;

namespace PileController.Service;

/// <summary>What the loop had counted when a tick ended.</summary>
/// <param name="Missed">Ticks that fell out since the start.</param>
/// <param name="StepFaults">Ticks at which control failed since the start.</param>
/// <param name="RigFaults">Times the rig could not be read or told since the start.</param>
/// <param name="Dropped">Ticks the record dropped since the start.</param>
public readonly record struct TickTally(long Missed, long StepFaults, long RigFaults, long Dropped);

/// <summary>One tick as it is told to who must not miss any.</summary>
/// <param name="At">The moment.</param>
/// <param name="Decision">What was decided; null where control failed.</param>
/// <param name="Raw">What the rig said.</param>
/// <param name="Record">How the record was after the tick.</param>
/// <param name="Tally">What had been counted.</param>
public sealed record FollowedTick(Instant At, Decision? Decision, RigReadings Raw, RecordHealth Record, in TickTally Tally)
{
    /// <summary>What took effect at this tick.</summary>
    public IReadOnlyList<Command> Commands { get; init; } = [];
}

/// <summary>
/// Hands every tick, those at which control failed too, to one follower. Bounded: a follower that stands still costs
/// the oldest ticks, and never holds up the loop.
/// </summary>
/// <threadsafety>One writer, one reader.</threadsafety>
public sealed class TickTrail
{
    /// <summary>Ticks that wait at most.</summary>
    public const int Capacity = 512;

    private readonly Channel<FollowedTick> _ticks = System.Threading.Channels.Channel.CreateBounded<FollowedTick>(
        new BoundedChannelOptions(Capacity) { FullMode = BoundedChannelFullMode.DropOldest, SingleReader = true, SingleWriter = true });

    /// <summary>The ticks in their order.</summary>
    public ChannelReader<FollowedTick> Ticks => _ticks.Reader;

    /// <summary>Tells a tick. Never waits.</summary>
    internal void Tell(FollowedTick tick) => _ticks.Writer.TryWrite(tick);
}
