using Microsoft.Extensions.Logging.Abstractions;
using PileController.Control;
using PileController.Control.Decisions;
using PileController.Records;
using PileController.Rigs;
using PileController.Service;
using PileController.Settings;

namespace PileController.Commissioning.Running;

/// <summary>
/// The real rig without the service: the same tick runner over the same record, so that trips that stand go on standing and
/// what is done by hand is on record.
/// </summary>
internal sealed class HardwareTestRig : ITestRig
{
    private readonly IRig _rig;
    private readonly TickRunner _runner;
    private readonly CommandInbox _inbox;
    private readonly PanelFeed _feed;
    private readonly InstantReader _instants;
    private readonly TickPacer _pacer;
    private readonly TimeProvider _time;

    private HardwareTestRig(IRig rig, IPileRecord record, PileSettings settings, Memory start, TimeProvider time)
    {
        TickSettings ticks = new()
        {
            Control = settings.Control,
            Start = start,
            StartMonotonicMilliseconds = Math.Max(0, start.LastMonotonicMilliseconds),
            OffsetMinutes = settings.Site.OffsetMinutesAt(time.GetUtcNow().ToUnixTimeMilliseconds()),
            Fitted = [.. settings.Rig.Probes.Select(probe => probe.Channel)],
        };
        _rig = rig;
        _time = time;
        _inbox = new CommandInbox(start.Sequence + 1);
        _feed = new PanelFeed(time);
        _runner = new TickRunner(rig, record, _inbox, _feed, new TickTrail(), new TickCounts(), ticks, NullLogger<TickRunner>.Instance);
        _instants = new InstantReader(time, ticks);
        _pacer = new TickPacer(_instants.MonotonicMilliseconds, ticks.TickMilliseconds);
    }

    /// <inheritdoc/>
    public bool Simulated => false;

    /// <inheritdoc/>
    public long UtcMilliseconds => _time.GetUtcNow().ToUnixTimeMilliseconds();

    /// <summary>Time now on the clock of the looks, s.</summary>
    public double Seconds => _instants.MonotonicMilliseconds * 0.001;

    /// <summary>Takes a rig over; its outputs are safe when this is done.</summary>
    /// <param name="rig">The rig; disposed with this.</param>
    /// <param name="record">The record, which this process alone has open.</param>
    /// <param name="settings">The holding.</param>
    /// <param name="time">The clock.</param>
    /// <param name="cancellation">Gives it up.</param>
    public static async Task<HardwareTestRig> OpenAsync(IRig rig, IPileRecord record, PileSettings settings, TimeProvider time, CancellationToken cancellation)
    {
        Memory start = (await record.LastMemoryAsync(cancellation))?.AfterRestart() ?? Memory.Fresh;
        HardwareTestRig opened = new(rig, record, settings, start, time);
        await opened._runner.MakeSafeAsync();
        return opened;
    }

    /// <inheritdoc/>
    public async ValueTask<Look> TickAsync(IReadOnlyList<Command> commands, CancellationToken cancellation)
    {
        foreach (Command command in commands)
        {
            _inbox.TryPost(command, out _);
        }

        for (long wait = _pacer.DueMilliseconds - _instants.MonotonicMilliseconds; wait > 0; wait = _pacer.DueMilliseconds - _instants.MonotonicMilliseconds)
        {
            await Task.Delay(TimeSpan.FromMilliseconds(wait), _time, cancellation);
        }

        Instant at = _instants.Now();
        Pace pace = _pacer.Begin(at.MonotonicMilliseconds);
        long before = _feed.Latest?.Sequence ?? 0;
        await _runner.RunAsync(at, pace.LateMilliseconds, cancellation);
        return _feed.Latest is { } news && news.Sequence > before
            ? Look.Of(news.Decision, news.Raw)
            : new Look(at.MonotonicMilliseconds * 0.001, Control.Readings.RigReadings.None, Outputs.Safe, "Control failed at this tick, and all outputs are off.");
    }

    /// <summary>All outputs off for good, and the lines let go.</summary>
    public async ValueTask DisposeAsync()
    {
        try
        {
            await _runner.EndAsync();
        }
        finally
        {
            await _rig.DisposeAsync();
        }
    }
}
