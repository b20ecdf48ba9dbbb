using PileController.Service;

namespace PileController.Alarms;

/// <summary>Follows every tick beside the loop and keeps the alarms' file. Nothing here can hold up or disturb control.</summary>
internal sealed partial class AlarmWatch(AlarmDesk desk, TickTrail trail, AlarmKeeping keeping, ILogger<AlarmWatch> logger)
    : BesideService(logger)
{
    // Running times (delays, shelves) are kept now and then though nothing happened, so that a restart loses little of them.
    private const double KeepEverySeconds = 600;

    private AlarmState? _kept;
    private double _triedSeconds;
    private string? _said;

    /// <inheritdoc/>
    protected override async Task RunAsync(CancellationToken stopping)
    {
        try
        {
            await foreach (FollowedTick tick in trail.Ticks.ReadAllAsync(stopping).ConfigureAwait(false))
            {
                Follow(tick);
            }
        }
        finally
        {
            Keep();
        }
    }

    /// <summary>Steps the alarms by a tick, and keeps them where they changed.</summary>
    internal void Follow(FollowedTick tick)
    {
        try
        {
            desk.Follow(tick);
        }
        catch (Exception fault)
        {
            Say($"The alarms could not be judged: {fault.Message}", fault);
        }

        AlarmState now = desk.State;
        bool due = now.Seconds - _triedSeconds >= KeepEverySeconds && now.Rows.Any(row => row != AlarmMemory.Fresh);
        if (now.Number != (_kept?.Number ?? keeping.StartNumber) || due)
        {
            _triedSeconds = now.Seconds;
            Keep();
        }
    }

    private void Keep()
    {
        AlarmState now = desk.State;
        if (keeping.File is not { } file || ReferenceEquals(now, _kept))
        {
            return;
        }

        try
        {
            file.Save(desk.Table, now);
            _kept = now;
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            // Tried again at the next event or in ten minutes; the record tells of a disk that fails.
            _kept = now;
            Say($"The alarms cannot be kept: {fault.Message}", fault);
        }
    }

    private void Say(string what, Exception fault)
    {
        if (_said != what)
        {
            _said = what;
            LogTrouble(what, fault);
        }
    }

    [LoggerMessage(Level = LogLevel.Error, Message = "{What}")]
    private partial void LogTrouble(string what, Exception fault);
}

/// <summary>Where the alarms are kept.</summary>
/// <param name="File">The file; null where they are not kept.</param>
/// <param name="StartNumber">Number of the last event it had at the start.</param>
internal sealed record AlarmKeeping(AlarmFile? File, long StartNumber);
