using System.Text.Json;
using PileController.Control;
using PileController.Control.Decisions;
using PileController.Control.Modes;
using PileController.Records.Keeping;
using PileController.Records.Packing;
using PileController.Records.Storage;

namespace PileController.Records.Checking;

/// <summary>
/// Runs a record again: each batch from the memory stored at its head, every tick through the step, and compares
/// the digest of each decision and the memory each batch ends with.
/// </summary>
public static class RecordReplayer
{
    /// <summary>Runs a record.</summary>
    /// <param name="dataDirectory">Its folder.</param>
    /// <param name="step">Control with its settings.</param>
    /// <param name="progress">Told the number of ticks done after each batch; may be null.</param>
    /// <exception cref="RecordInUseException">It is being changed without a pause.</exception>
    /// <exception cref="DirectoryNotFoundException">There is no such folder, or no record in it.</exception>
    public static ReplayReport Run(string dataDirectory, ReplayStep step, IProgress<long>? progress = null) =>
        Run(dataDirectory, _ => step, progress);

    /// <summary>Runs a record, each block with the settings it was made with.</summary>
    /// <param name="dataDirectory">Its folder.</param>
    /// <param name="steps">Finds control for a block's origin.</param>
    /// <param name="progress">Told the number of ticks done after each batch; may be null.</param>
    /// <exception cref="RecordInUseException">It is being changed without a pause.</exception>
    /// <exception cref="DirectoryNotFoundException">There is no such folder, or no record in it.</exception>
    public static ReplayReport Run(string dataDirectory, ReplaySteps steps, IProgress<long>? progress = null)
    {
        using RecordReader reader = RecordReader.Open(dataDirectory);
        return Run(reader.Batches, steps, progress);
    }

    internal static ReplayReport Run(IEnumerable<StoredBatch> batches, ReplaySteps steps, IProgress<long>? progress = null)
    {
        Course course = new(steps);
        foreach (StoredBatch stored in batches)
        {
            if (TryOpen(stored, course.Problems) is { } tape)
            {
                course.Run(tape);
            }

            progress?.Report(course.Ticks);
        }

        return new ReplayReport(
            course.Ticks, course.Stretches.Sum(stretch => stretch.Identical),
            course.Stretches.Select(stretch => stretch.FirstDifference).FirstOrDefault(first => first is not null),
            course.Stretches, course.Problems);
    }

    // Only reading is guarded: an error of the step itself goes to the caller.
    private static ReplayTape? TryOpen(StoredBatch stored, List<string> problems)
    {
        try
        {
            return ReplayTape.Of(stored.Batch());
        }
        catch (Exception exception) when (RecordShelf.IsDamage(exception) || exception is JsonException)
        {
            problems.Add($"Tick {stored.Head.FirstSequence} to {stored.Head.LastSequence}: {exception.Message}");
            return null;
        }
    }

    private sealed class Course(ReplaySteps steps)
    {
        private readonly DecisionDigest _digest = new();

        public long Ticks { get; private set; }

        public List<ReplayStretch> Stretches { get; } = [];

        public List<string> Problems { get; } = [];

        public void Run(ReplayTape tape)
        {
            Ticks += tape.Count;
            if (steps(tape.Origin) is not { } step)
            {
                Problems.Add(
                    $"Tick {tape.Batch.FirstSequence} to {tape.Batch.Head.LastSequence}: the settings they were made with ({tape.Origin.SettingsHash}) are not kept.");
                return;
            }

            (int identical, ReplayDifference? first) = Compare(tape, step);
            if (Stretches.Count == 0 || Stretches[^1].Origin != tape.Origin)
            {
                Stretches.Add(new ReplayStretch(tape.Origin, tape.Batch.FirstSequence, 0, 0, 0, null));
            }

            ReplayStretch stretch = Stretches[^1];
            Stretches[^1] = stretch with
            {
                LastSequence = tape.Batch.Head.LastSequence,
                Ticks = stretch.Ticks + tape.Count,
                Identical = stretch.Identical + identical,
                FirstDifference = stretch.FirstDifference ?? first,
            };
        }

        private (int Identical, ReplayDifference? First) Compare(ReplayTape tape, ReplayStep step)
        {
            int identical = 0;
            ReplayDifference? first = null;
            Memory memory = tape.MemoryBefore;
            for (int row = 0; row < tape.Count; row++)
            {
                Instant at = tape.Instants[row];
                (Decision decision, memory) = step(memory, tape.Readings[row], tape.CommandsAt(row), at);
                if (unchecked((long)_digest.Of(decision)) == tape.Digests[row])
                {
                    identical++;
                }
                else
                {
                    first ??= new ReplayDifference(
                        tape.Batch.FirstSequence + row, at.UtcMilliseconds, WhatOf(tape.Batch, row, decision));
                }
            }

            if (RecordJson.Of(memory).GetRawText() != tape.MemoryAfter)
            {
                first ??= new ReplayDifference(
                    tape.Batch.Head.LastSequence, tape.Instants[^1].UtcMilliseconds,
                    "What the tick hands on differs from what is stored.");
            }

            return (identical, first);
        }

        private static string WhatOf(PackedBatch batch, int row, Decision decision)
        {
            var mode = (Mode)batch.Column(TickColumns.Mode)[row];
            var kinds = (DecisionKinds)batch.Column(TickColumns.Kinds)[row];
            if (decision.Mode != mode || decision.Kinds != kinds)
            {
                return $"The mode was {mode} and the kinds {kinds}; now they are {decision.Mode} and {decision.Kinds}.";
            }

            for (int i = 0; i < Queries.DecisionSeries.All.Count; i++)
            {
                Queries.DecisionFigure figure = Queries.DecisionSeries.All[i];
                double then = batch.Column(TickColumns.FirstFigure + i)[row] / figure.PerUnit;
                double now = figure.Of(decision);
                if (Math.Abs(then - now) > 1 / figure.PerUnit)
                {
                    return $"{figure.Name} was {then} {figure.Unit}; now it is {now} {figure.Unit}.";
                }
            }

            return "The decision differs in a figure that is kept only as a digest.";
        }
    }
}
