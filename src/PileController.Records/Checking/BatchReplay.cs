using System.Runtime.ExceptionServices;
using System.Text.Json;
using PileController.Control;
using PileController.Control.Decisions;
using PileController.Control.Modes;
using PileController.Records.Packing;
using PileController.Records.Queries;
using PileController.Records.Storage;

namespace PileController.Records.Checking;

/// <summary>How the replay of one batch went.</summary>
internal sealed record BatchReplay
{
    private ExceptionDispatchInfo? _thrown;

    /// <summary>Which ticks.</summary>
    public BatchHead Head { get; private init; }

    /// <summary>Who made them; null for a batch that cannot be read.</summary>
    public RecordOrigin? Origin { get; private init; }

    /// <summary>How many; 0 for a batch that cannot be read.</summary>
    public int Ticks { get; private init; }

    /// <summary>How many came out the same to the bit.</summary>
    public int Identical { get; private init; }

    /// <summary>The first that did not, or null.</summary>
    public ReplayDifference? FirstDifference { get; private init; }

    /// <summary>Why it was left out, or null.</summary>
    public string? Problem { get; private init; }

    /// <summary>One that could not be read.</summary>
    public static BatchReplay Unreadable(string problem) => new() { Problem = problem };

    /// <summary>Says what is wrong with a batch.</summary>
    public static string ProblemOf(BatchHead head, string what) => $"Tick {head.FirstSequence} to {head.LastSequence}: {what}";

    /// <summary>Runs a batch. What the step throws is kept for <see cref="ThrowWhatTheStepThrew"/>.</summary>
    public static BatchReplay Of(BatchHead head, PackedBatch batch, KnownSteps steps)
    {
        try
        {
            return TryUnpack(head, batch, out ReplayTape? tape) is { } unreadable ? unreadable : Of(tape!, steps);
        }
        catch (Exception exception)
        {
            return new BatchReplay { _thrown = ExceptionDispatchInfo.Capture(exception) };
        }
    }

    /// <summary>An error of the step itself goes to the caller.</summary>
    public void ThrowWhatTheStepThrew() => _thrown?.Throw();

    private static BatchReplay? TryUnpack(BatchHead head, PackedBatch batch, out ReplayTape? tape)
    {
        tape = null;
        try
        {
            tape = ReplayTape.Of(batch);
            return null;
        }
        catch (Exception exception) when (RecordShelf.IsDamage(exception) || exception is JsonException)
        {
            return Unreadable(ProblemOf(head, exception.Message));
        }
    }

    private static BatchReplay Of(ReplayTape tape, KnownSteps steps)
    {
        BatchReplay replay = new() { Head = tape.Batch.Head, Origin = tape.Origin, Ticks = tape.Count };
        if (steps.Of(tape.Origin) is not { } step)
        {
            return replay with
            {
                Problem = ProblemOf(tape.Batch.Head, $"the settings they were made with ({tape.Origin.SettingsHash}) are not kept."),
            };
        }

        (int identical, ReplayDifference? first) = Compare(tape, step);
        return replay with { Identical = identical, FirstDifference = first };
    }

    private static (int Identical, ReplayDifference? First) Compare(ReplayTape tape, ReplayStep step)
    {
        DecisionDigest digest = new();
        int identical = 0;
        ReplayDifference? first = null;
        Memory memory = tape.MemoryBefore;
        for (int row = 0; row < tape.Count; row++)
        {
            Instant at = tape.Instants[row];
            (Decision decision, memory) = step(memory, tape.Readings[row], tape.CommandsAt(row), at);
            if (unchecked((long)digest.Of(decision)) == tape.Digests[row])
            {
                identical++;
            }
            else
            {
                first ??= new ReplayDifference(tape.Batch.FirstSequence + row, at.UtcMilliseconds, WhatOf(tape.Batch, row, decision));
            }
        }

        string handedOn = RecordJson.Of(memory).GetRawText();
        if (handedOn != tape.MemoryAfter && handedOn != tape.MemoryAfterToldNow())
        {
            first ??= new ReplayDifference(
                tape.Batch.Head.LastSequence, tape.Instants[^1].UtcMilliseconds, "What the tick hands on differs from what is stored.");
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

        for (int i = 0; i < DecisionSeries.All.Count; i++)
        {
            DecisionFigure figure = DecisionSeries.All[i];
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
