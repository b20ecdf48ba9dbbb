using PileController.Control;
using PileController.Control.Decisions;
using PileController.Control.Readings;

namespace PileController.Records.Checking;

/// <summary>One step of control, as <see cref="Controller.Step"/> takes it with its settings given.</summary>
public delegate (Decision Decision, Memory Memory) ReplayStep(
    Memory memory, RigReadings readings, IReadOnlyList<Command> commands, Instant at);

/// <summary>Control with the settings a block was made with, or null when they are not to be had.</summary>
public delegate ReplayStep? ReplaySteps(RecordOrigin origin);

/// <summary>How a replay went.</summary>
/// <param name="Ticks">Ticks run again.</param>
/// <param name="Identical">Ticks whose decision came out the same to the bit.</param>
/// <param name="FirstDifference">The first that did not, or null.</param>
/// <param name="Stretches">The same by who made the ticks, in order: a new stretch begins where that changes.</param>
/// <param name="Problems">Batches that could not be read or run and were left out.</param>
public sealed record ReplayReport(
    long Ticks, long Identical, ReplayDifference? FirstDifference, IReadOnlyList<ReplayStretch> Stretches, IReadOnlyList<string> Problems);

/// <summary>How the replay of the ticks went that one build made with one set of settings.</summary>
/// <param name="Origin">Who made them.</param>
/// <param name="FirstSequence">First tick.</param>
/// <param name="LastSequence">Last tick.</param>
/// <param name="Ticks">Ticks run again.</param>
/// <param name="Identical">Ticks whose decision came out the same to the bit.</param>
/// <param name="FirstDifference">The first that did not, or null.</param>
public sealed record ReplayStretch(
    RecordOrigin Origin, long FirstSequence, long LastSequence, long Ticks, long Identical, ReplayDifference? FirstDifference);

/// <summary>Where a replay first differs.</summary>
/// <param name="Sequence">The tick.</param>
/// <param name="UtcMilliseconds">Its wall time.</param>
/// <param name="What">What differs, in a sentence.</param>
public sealed record ReplayDifference(long Sequence, long UtcMilliseconds, string What);
