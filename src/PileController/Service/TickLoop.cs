namespace PileController.Service;

/// <summary>
/// The one owner loop. Outputs are safe before anything else of the host starts, and after the loop has ended,
/// however it ended.
/// </summary>
internal sealed partial class TickLoop(
    TickRunner runner, TickCounts counts, TickSettings settings, TimeProvider clock, ILogger<TickLoop> logger)
    : IHostedLifecycleService, IDisposable
{
    // A tick takes milliseconds, with a rig that hangs a few seconds.
    private static readonly TimeSpan LongestTick = TimeSpan.FromSeconds(10);

    private readonly CancellationTokenSource _stopping = new();
    private Task _loop = Task.CompletedTask;

    /// <summary>Makes the outputs safe before any other service starts; the host does not start when that fails.</summary>
    public async Task StartingAsync(CancellationToken cancellationToken) => await runner.MakeSafeAsync().ConfigureAwait(false);

    /// <summary>Starts the loop; the first tick comes at once.</summary>
    public Task StartAsync(CancellationToken cancellationToken)
    {
        _loop = Task.Run(() => RunAsync(_stopping.Token), CancellationToken.None);
        return Task.CompletedTask;
    }

    /// <summary>
    /// Ends the loop, waits for the tick that runs, and makes the outputs safe. Before anything else of the host stops: a
    /// slow visitor of the page must not keep the pump running.
    /// </summary>
    public async Task StoppingAsync(CancellationToken cancellationToken)
    {
        await _stopping.CancelAsync().ConfigureAwait(false);
        try
        {
            await _loop.WaitAsync(LongestTick, CancellationToken.None).ConfigureAwait(false);
        }
        finally
        {
            await runner.EndAsync().ConfigureAwait(false);
        }
    }

    /// <summary>The same, for a host that skipped it.</summary>
    public Task StopAsync(CancellationToken cancellationToken) => _stopping.IsCancellationRequested ? Task.CompletedTask : StoppingAsync(cancellationToken);

    /// <inheritdoc/>
    public Task StartedAsync(CancellationToken cancellationToken) => Task.CompletedTask;

    /// <inheritdoc/>
    public Task StoppedAsync(CancellationToken cancellationToken) => Task.CompletedTask;

    /// <summary>Ends the loop, should nobody have stopped it.</summary>
    public void Dispose()
    {
        _stopping.Cancel();
        _stopping.Dispose();
    }

    private async Task RunAsync(CancellationToken stopping)
    {
        InstantReader instants = new(clock, settings);
        TickPacer pacer = new(instants.MonotonicMilliseconds, settings.TickMilliseconds);
        try
        {
            while (!stopping.IsCancellationRequested)
            {
                await WaitUntilAsync(pacer.DueMilliseconds, instants, stopping).ConfigureAwait(false);
                Control.Instant at = instants.Now();
                Pace pace = pacer.Begin(at.MonotonicMilliseconds);
                if (pace.Missed > 0)
                {
                    counts.AddMissed(pace.Missed);
                    LogMissed(pace.Missed, pace.LateMilliseconds);
                }

                await runner.RunAsync(at, pace.LateMilliseconds, stopping).ConfigureAwait(false);
            }
        }
        catch (OperationCanceledException) when (stopping.IsCancellationRequested)
        {
            // The stop ended a wait or a reading; StopAsync makes the outputs safe.
        }
        catch (Exception fault)
        {
            LogEnded(fault);
            await runner.MakeSafeAsync().ConfigureAwait(false);
            throw;
        }
    }

    private async Task WaitUntilAsync(long dueMilliseconds, InstantReader instants, CancellationToken stopping)
    {
        for (long wait = dueMilliseconds - instants.MonotonicMilliseconds; wait > 0; wait = dueMilliseconds - instants.MonotonicMilliseconds)
        {
            await Task.Delay(TimeSpan.FromMilliseconds(wait), clock, stopping).ConfigureAwait(false);
        }
    }

    [LoggerMessage(Level = LogLevel.Warning, Message = "{Missed} ticks fell out; this one began {LateMilliseconds} ms late")]
    private partial void LogMissed(long missed, long lateMilliseconds);

    [LoggerMessage(Level = LogLevel.Critical, Message = "The tick loop ended by a fault; outputs are made safe")]
    private partial void LogEnded(Exception fault);
}
