using PileController.Control;
using PileController.Control.Decisions;
using PileController.Control.Readings;
using PileController.Rigs.Simulated;

namespace PileController.Rigs.Faults;

/// <summary>
/// Puts faults into any rig: the probes' into what it says, a dead pump and a jammed valve into what it is told.
/// A blocked line is a thing of the
/// water, a probe taken out one of its place: both show only on a <see cref="SimulatedRig"/>.
/// </summary>
/// <threadsafety>One caller at a time; only the board may be touched from other threads.</threadsafety>
public sealed class FaultyRig : IRig
{
    private readonly IRig _inner;
    private readonly FaultBoard _board;
    private readonly ReadingFaults _readings;
    private double _valveOpening;

    /// <summary>Wraps a rig, and disposes it with itself.</summary>
    /// <param name="inner">The rig.</param>
    /// <param name="board">Where faults are put in.</param>
    /// <exception cref="ArgumentException">The rig already acts out the faults of this board.</exception>
    public FaultyRig(IRig inner, FaultBoard board)
    {
        if (inner is SimulatedRig simulated && ReferenceEquals(simulated.Faults, board))
        {
            throw new ArgumentException(
                "The simulated rig acts out its own board; wrapped once more every fault would be put in twice.", nameof(inner));
        }

        _inner = inner;
        _board = board;
        _readings = new ReadingFaults(board);
    }

    /// <inheritdoc/>
    public async ValueTask<RigReadings> ReadAsync(Instant at, CancellationToken cancellation) =>
        _readings.Distort(await _inner.ReadAsync(at, cancellation).ConfigureAwait(false), at);

    /// <inheritdoc/>
    public ValueTask ApplyAsync(Outputs outputs, CancellationToken cancellation) => _inner.ApplyAsync(Distort(outputs), cancellation);

    /// <inheritdoc/>
    public ValueTask ApplyHeldAsync(Outputs outputs, CancellationToken cancellation) => _inner.ApplyHeldAsync(Distort(outputs), cancellation);

    private Outputs Distort(Outputs outputs)
    {
        OutputsCheck.Require(outputs);
        foreach (Fault fault in _board.Active)
        {
            outputs = fault.Kind switch
            {
                FaultKind.DeadPump => outputs with { PumpDuty = 0 },
                FaultKind.ValveJammed => outputs with { ValveOpening = _valveOpening },
                _ => outputs,
            };
        }

        _valveOpening = outputs.ValveOpening;
        return outputs;
    }

    /// <inheritdoc/>
    public ValueTask DisposeAsync() => _inner.DisposeAsync();
}
