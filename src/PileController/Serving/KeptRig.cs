using PileController.Control;
using PileController.Control.Decisions;
using PileController.Control.Readings;
using PileController.Rigs;
using PileController.Settings;
using PileController.Simulation;

namespace PileController.Serving;

/// <summary>The simulated rig, which also keeps its plant once an hour and at the end, so that the demo can be taken up.</summary>
internal sealed class KeptRig(Holding holding, PileSettings settings, DataFolder folder) : IRig
{
    private const long HourMilliseconds = 3_600_000;

    private readonly string _madeWith = settings.PlantFingerprint();
    private long? _keptAt;
    private WarmStart? _latest;

    /// <inheritdoc/>
    public async ValueTask<RigReadings> ReadAsync(Instant at, CancellationToken cancellation)
    {
        RigReadings readings = await holding.Rig.ReadAsync(at, cancellation).ConfigureAwait(false);
        if (holding.Plant.AtSlowStep)
        {
            _latest = new WarmStart(_madeWith, holding.Snapshot());
            if (_keptAt is not { } kept || at.MonotonicMilliseconds - kept >= HourMilliseconds)
            {
                _keptAt = at.MonotonicMilliseconds;
                WarmStart keep = _latest;

                // The tick does not wait for the card.
                _ = Task.Run(() => Keep(keep), CancellationToken.None);
            }
        }

        return readings;
    }

    /// <inheritdoc/>
    public ValueTask ApplyAsync(Outputs outputs, CancellationToken cancellation) => holding.Rig.ApplyAsync(outputs, cancellation);

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        if (_latest is not null)
        {
            Keep(_latest);
        }

        await holding.Rig.DisposeAsync().ConfigureAwait(false);
    }

    private void Keep(WarmStart state)
    {
        try
        {
            lock (folder)
            {
                folder.KeepHolding(state);
            }
        }
        catch (IOException)
        {
            // The demo then starts again from its warm start; the record says for itself that the card fails.
        }
    }
}
