namespace PileController.Service;

/// <summary>
/// What runs beside the loop and may never take the host down with it: whatever it throws ends it alone, and is said.
/// </summary>
internal abstract partial class BesideService(ILogger logger) : BackgroundService
{
    /// <summary>Runs until stopped.</summary>
    protected abstract Task RunAsync(CancellationToken stopping);

    /// <inheritdoc/>
    protected sealed override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        try
        {
            await RunAsync(stoppingToken).ConfigureAwait(false);
        }
        catch (OperationCanceledException) when (stoppingToken.IsCancellationRequested)
        {
            // The stop.
        }
        catch (Exception fault)
        {
            LogEnded(GetType().Name, fault);
        }
    }

    [LoggerMessage(Level = LogLevel.Critical, Message = "{Name} ended by a fault; control goes on")]
    private partial void LogEnded(string name, Exception fault);
}
