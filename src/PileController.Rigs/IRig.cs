using PileController.Control;
using PileController.Control.Decisions;
using PileController.Control.Readings;

namespace PileController.Rigs;

/// <summary>
/// Probes and actuators, real or simulated. Called by the one owner loop only: never two calls at once.
/// </summary>
public interface IRig : IAsyncDisposable
{
    /// <summary>Reads every probe for one tick, quantised to the channels' quanta. A probe that fails is a quality, not an exception.</summary>
    ValueTask<RigReadings> ReadAsync(Instant at, CancellationToken cancellation);

    /// <summary>Tells the actuators what to do. The first call after construction, and the last, is <see cref="Outputs.Safe"/>.</summary>
    ValueTask ApplyAsync(Outputs outputs, CancellationToken cancellation);

    /// <summary>
    /// As <see cref="ApplyAsync(Outputs, CancellationToken)"/>, where a person holds the valve: an opening of nothing then means
    /// shut, and not wherever the valve is safe. A rig whose valve knows no other safe place than shut has nothing to add.
    /// </summary>
    ValueTask ApplyHeldAsync(Outputs outputs, CancellationToken cancellation) => ApplyAsync(outputs, cancellation);
}
