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
/// what is done by hand is on record. The timer in series with the loads is fed as long as ticks come out well.
/// </summary>
internal sealed class HardwareTestRig : ITestRig
{
    // Well within the time for which a line is held without a word; a tick may be longer.
    private static readonly TimeSpan LongestSilence = TimeSpan.FromSeconds(3);

    private readonly IRig _rig;
    private readonly IHeldLine? _pulse;
    private readonly TickRunner _runner;
    private readonly CommandInbox _inbox;
    private readonly PanelFeed _feed;
    private readonly InstantReader _instants;
    private readonly TickPacer _pacer;
    private readonly TimeProvider _time;
    private readonly TickCounts _counts = new();
    private bool _isWell;

    private HardwareTestRig(IRig rig, IHeldLine? pulse, IPileRecord record, PileSettings settings, Memory start, TimeProvider time)
    {
        TickSettings ticks = new()
        {
            Control = settings.Control,
            Start = start,
            StartMonotonicMilliseconds = Math.Max(0, start.LastMonotonicMilliseconds),
            OffsetMinutesAt = settings.Site.OffsetMinutesAt,
            Fitted = [.. settings.Rig.Probes.Select(probe => probe.Channel)],
        };
        _rig = rig;
        _pulse = pulse;
        _time = time;
        _inbox = new CommandInbox(start.Sequence + 1);
        _feed = new PanelFeed(time);
        _runner = new TickRunner(rig, record, _inbox, _feed, new TickTrail(), _counts, ticks, NullLogger<TickRunner>.Instance);
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
    /// <param name="pulse">The line that feeds the timer in series with the loads; null where there is none.</param>
    /// <param name="record">The record, which this process alone has open.</param>
    /// <param name="settings">The holding.</param>
    /// <param name="time">The clock.</param>
    /// <param name="cancellation">Gives it up.</param>
    public static async Task<HardwareTestRig> OpenAsync(
        IRig rig, IHeldLine? pulse, IPileRecord record, PileSettings settings, TimeProvider time, CancellationToken cancellation)
    {
        Memory start = (await record.LastMemoryAsync(cancellation))?.AfterRestart() ?? Memory.Fresh;
        HardwareTestRig opened = new(rig, pulse, record, settings, start, time);
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
            Feed();
            await Task.Delay(TimeSpan.FromMilliseconds(Math.Min(wait, LongestSilence.TotalMilliseconds)), _time, cancellation);
        }

        Instant at = _instants.Now();
        Pace pace = _pacer.Begin(at.MonotonicMilliseconds);
        long before = _feed.Latest?.Sequence ?? 0;
        await _runner.RunAsync(at, pace.LateMilliseconds, cancellation);
        TickNews? news = _feed.Latest is { } latest && latest.Sequence > before ? latest : null;
        _isWell = news is not null && _counts is { RigAnswers: true, RigObeys: true };
        Feed();
        return news is not null
            ? Look.Of(news.Decision, news.Raw)
            : new Look(at.MonotonicMilliseconds * 0.001, Control.Readings.RigReadings.None, Outputs.Safe, "Control failed at this tick, and all outputs are off.");
    }

    /// <summary>All outputs off for good, and the lines let go.</summary>
    public async ValueTask DisposeAsync()
    {
        _isWell = false;
        Feed();
        try
        {
            await _runner.EndAsync();
        }
        finally
        {
            await _rig.DisposeAsync();
        }
    }

    // Before the first tick nothing is known to be well.
    private void Feed() => _pulse?.Say(_isWell);
}
