using PileController.Service;

namespace PileController.Access;

/// <summary>Brings the journal to the card, and every few minutes when keys were used last.</summary>
internal sealed partial class AccessKeeper(AccessDesk desk, ILogger<AccessKeeper> logger) : BesideService(logger)
{
    private static readonly TimeSpan Sweep = TimeSpan.FromSeconds(5);
    private static readonly TimeSpan Keep = TimeSpan.FromMinutes(10);
    private string? _said;

    /// <inheritdoc/>
    protected override async Task RunAsync(CancellationToken stopping)
    {
        long kept = desk.Clock.GetTimestamp();
        while (!stopping.IsCancellationRequested)
        {
            await desk.Journal.WaitAsync(Sweep, stopping).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
            Try(desk.Journal.Write);
            if (desk.Clock.GetElapsedTime(kept) >= Keep || stopping.IsCancellationRequested)
            {
                kept = desk.Clock.GetTimestamp();
                Try(desk.Keys.Keep);
            }
        }
    }

    private void Try(Action write)
    {
        try
        {
            write();
            _said = null;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            // Said once, not at every try.
            if (_said != e.Message)
            {
                _said = e.Message;
                LogNotWritten(e.Message);
            }
        }
    }

    [LoggerMessage(Level = LogLevel.Warning, Message = "The journal of access cannot be written: {Why}")]
    private partial void LogNotWritten(string why);
}
