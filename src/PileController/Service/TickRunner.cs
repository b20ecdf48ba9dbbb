using PileController.Control;
using PileController.Control.Decisions;
using PileController.Control.Readings;
using PileController.Records;
using PileController.Rigs;

namespace PileController.Service;

/// <summary>
/// Runs one tick: read, take commands, decide, act, record, tell. Whatever fails, the outputs end up decided or
/// safe and the next tick comes. Used by the one owner loop only.
/// </summary>
internal sealed partial class TickRunner(
    IRig rig, IPileRecord record, CommandInbox inbox, PanelFeed feed, TickTrail trail, TickCounts counts, TickSettings settings,
    ILogger<TickRunner> logger)
{
    // A wall clock that is slewed moves by less than this in a tick; more is a jump.
    private const long JumpToleranceMilliseconds = 500;

    private Memory _memory = settings.Start;
    private Instant? _before;
    private bool _storeFailing;
    private string? _lastLogged;
    private Task<RigReadings>? _reading;
    private volatile bool _ended;

    /// <summary>Switches everything off and shuts the valve, whatever else goes on.</summary>
    /// <exception cref="Exception">Whatever the rig throws: a rig that cannot be made safe must be heard of.</exception>
    public ValueTask MakeSafeAsync() => rig.ApplyAsync(Outputs.Safe, CancellationToken.None);

    /// <summary>Makes the outputs safe for good: whatever a tick that still runs decides comes to nothing.</summary>
    /// <exception cref="Exception">As <see cref="MakeSafeAsync"/>.</exception>
    public ValueTask EndAsync()
    {
        _ended = true;
        return MakeSafeAsync();
    }

    /// <summary>Runs one tick.</summary>
    /// <param name="at">The moment.</param>
    /// <param name="lateMilliseconds">How late it began; within the tolerance counts as on time.</param>
    /// <param name="cancellation">Ends the reading; never leaves outputs half applied.</param>
    public async ValueTask RunAsync(Instant at, long lateMilliseconds, CancellationToken cancellation)
    {
        RigReadings readings = await ReadAsync(at, cancellation).ConfigureAwait(false);
        List<Command> commands = inbox.Drain(_memory.Sequence + 1);
        AddReport(commands, at, lateMilliseconds);
        _before = at;

        Memory before = _memory;
        Decision decision;
        try
        {
            (decision, _memory) = settings.Step(settings.Control, before, readings, commands, at);
        }
        catch (Exception fault)
        {
            Say(counts.AddStepFault($"Control failed: {fault.Message}"), fault);
            await ApplyAsync(Outputs.Safe).ConfigureAwait(false);
            Trail(at, null, readings, commands);
            return;
        }

        await ApplyAsync(decision.Outputs, ValveHeld.Of(decision)).ConfigureAwait(false);
        Append(new TickEntry(readings, commands, before, decision, _memory));
        feed.Publish(new TickNews(decision, readings, record.Health, _memory));
        Trail(at, decision, readings, commands);
    }

    private async ValueTask<RigReadings> ReadAsync(Instant at, CancellationToken cancellation)
    {
        try
        {
            // A reading that hangs is asked for no second time: it would only hang another one. One that came too late is
            // of another time and is not taken for this tick's.
            if (_reading is { IsCompleted: false })
            {
                throw new TimeoutException();
            }

            _reading = rig.ReadAsync(at, cancellation).AsTask();
            RigReadings readings = await _reading.WaitAsync(settings.LongestRead, settings.TrueTime, cancellation).ConfigureAwait(false);
            _reading = null;
            counts.RigAnswers = true;
            return readings;
        }
        catch (Exception fault) when (!cancellation.IsCancellationRequested)
        {
            _reading = _reading is { IsCompleted: false } ? _reading : null;
            counts.RigAnswers = false;
            string why = fault is TimeoutException ? $"it has not answered within {settings.LongestRead.TotalSeconds:0.#} s." : fault.Message;
            Say(counts.AddRigFault($"The rig could not be read: {why}"), fault);
            Reading[] silent = new Reading[ChannelTable.Count];
            foreach (Channel channel in settings.Fitted)
            {
                silent[(int)channel] = new Reading(0, ReadingQuality.NoAnswer, 0);
            }

            return new RigReadings(silent);
        }
    }

    private async ValueTask ApplyAsync(Outputs outputs, bool valveIsHeld = false)
    {
        if (_ended)
        {
            return;
        }

        try
        {
            await TellAsync(outputs, valveIsHeld).ConfigureAwait(false);
            counts.RigObeys = true;
        }
        catch (Exception fault)
        {
            counts.RigObeys = false;
            Say(counts.AddRigFault($"The rig could not be told what to do: {fault.Message}"), fault);
            if (outputs != Outputs.Safe || valveIsHeld)
            {
                await ApplyAsync(Outputs.Safe).ConfigureAwait(false);
            }
        }
    }

    private ValueTask TellAsync(Outputs outputs, bool valveIsHeld) =>
        valveIsHeld ? rig.ApplyHeldAsync(outputs, CancellationToken.None) : rig.ApplyAsync(outputs, CancellationToken.None);

    private void AddReport(List<Command> commands, Instant at, long lateMilliseconds)
    {
        long late = lateMilliseconds > settings.LateToleranceMilliseconds ? lateMilliseconds : 0;
        long jump = _before is { } last
            ? at.UtcMilliseconds - last.UtcMilliseconds - (at.MonotonicMilliseconds - last.MonotonicMilliseconds)
            : 0;
        jump = Math.Abs(jump) > JumpToleranceMilliseconds ? jump : 0;
        int restarts = _before is null ? settings.Restarts : 0;
        if (_storeFailing || late != 0 || jump != 0 || restarts > 0)
        {
            commands.Add(new ReportTick(_storeFailing, jump, late, restarts));
        }
    }

    private void Append(TickEntry entry)
    {
        try
        {
            _storeFailing = !record.TryAppend(entry) || !record.Health.Accepting;
        }
        catch (Exception fault)
        {
            // The port promises not to throw. Control must outlive a store that breaks even that promise.
            _storeFailing = true;
            LogStore(fault);
        }
    }

    private void Trail(Instant at, Decision? decision, RigReadings readings, IReadOnlyList<Command> commands)
    {
        try
        {
            RecordHealth health = record.Health;
            trail.Tell(new FollowedTick(
                at, decision, readings, health, new TickTally(counts.Missed, counts.StepFaults, counts.RigFaults, health.DroppedTicks))
            {
                Commands = commands,
            });
        }
        catch (Exception fault)
        {
            // Alarms may miss a tick; control may not be disturbed by them.
            LogStore(fault);
        }
    }

    // A fault that repeats each tick would fill the journal: said when new, then every 360th time.
    private void Say(long count, Exception fault)
    {
        if (fault.Message != _lastLogged || count % 360 == 0)
        {
            _lastLogged = fault.Message;
            LogFault(count, counts.LastFault, fault);
        }
    }

    [LoggerMessage(Level = LogLevel.Error, Message = "Fault {Count}: {What}")]
    private partial void LogFault(long count, string? what, Exception fault);

    [LoggerMessage(Level = LogLevel.Error, Message = "The record threw at a tick")]
    private partial void LogStore(Exception fault);
}
