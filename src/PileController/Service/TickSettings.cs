using PileController.Control;
using PileController.Control.Readings;

namespace PileController.Service;

/// <summary>What the tick loop is told at start.</summary>
public sealed record TickSettings
{
    /// <summary>What control is told about the place; its <see cref="ControlSettings.TickSeconds"/> paces the loop.</summary>
    public required ControlSettings Control { get; init; }

    /// <summary>What the last recorded tick handed on, or <see cref="Memory.Fresh"/>.</summary>
    public Memory Start { get; init; } = Memory.Fresh;

    /// <summary>
    /// Where the monotonic clock goes on from, ms. After a restart: the last recorded instant's, so that end times
    /// and persistence in the memory keep their meaning.
    /// </summary>
    public long StartMonotonicMilliseconds { get; init; }

    /// <summary>
    /// Local time minus UTC at a moment in UTC milliseconds, minutes (-840 to 840); asked at each tick, since summer time
    /// comes and goes while the loop runs.
    /// </summary>
    public Func<long, int> OffsetMinutesAt { get; init; } = _ => 0;

    /// <summary>The channels that have a probe; they count as not answering when the whole rig fails to read.</summary>
    public IReadOnlyList<Channel> Fitted { get; init; } = [];

    /// <summary>How long a rig may take to read, in true time. What is not there by then counts as not answering.</summary>
    public TimeSpan LongestRead { get; init; } = TimeSpan.FromSeconds(5);

    /// <summary>True time, also where the clock of the ticks runs faster.</summary>
    public TimeProvider TrueTime { get; init; } = TimeProvider.System;

    /// <summary>How often the program was started within the hour without having been stopped before.</summary>
    public int Restarts { get; init; }

    /// <summary>Lateness up to this is no lateness, ms. Half a tick by default.</summary>
    public long LateToleranceMilliseconds => (long)(Control.TickSeconds * 500);

    /// <summary>Length of a tick, ms.</summary>
    public long TickMilliseconds => (long)(Control.TickSeconds * 1000);

    /// <summary>The step; control's own unless a trial puts another in.</summary>
    public StepFunction Step { get; init; } = Controller.Step;
}
