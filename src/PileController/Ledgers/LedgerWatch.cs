using PileController.Service;

namespace PileController.Ledgers;

/// <summary>Keeps a day in the book soon after it is over, and at the start whatever went by while nothing ran.</summary>
internal sealed partial class LedgerWatch(LedgerDesk desk, PanelFeed feed, ILogger<LedgerWatch> logger) : BesideService(logger)
{
    private const long QuarterHourMilliseconds = 900_000;

    // The start has more urgent things to do.
    private const int TicksBefore = 6;
    private string? _said;

    /// <inheritdoc/>
    protected override async Task RunAsync(CancellationToken stopping)
    {
        long sequence = 0;
        long? quarter = null;
        for (int ticks = 0; ; ticks++)
        {
            // Every zone's midnight is at the start of a quarter of an hour.
            TickNews news = await feed.AfterAsync(sequence, stopping).ConfigureAwait(false);
            sequence = news.Sequence;
            long now = news.Decision.At.UtcMilliseconds / QuarterHourMilliseconds;
            if (now != quarter && ticks >= TicksBefore)
            {
                quarter = now;
                await KeepAsync(stopping).ConfigureAwait(false);
            }
        }
    }

    private async Task KeepAsync(CancellationToken stoppingToken)
    {
        try
        {
            await desk.KeepAsync(stoppingToken).ConfigureAwait(false);
            _said = null;
        }
        catch (Exception e) when (e is not OperationCanceledException)
        {
            // Said once, not at every try.
            if (_said != e.Message)
            {
                _said = e.Message;
                LogNotKept(e.Message);
            }
        }
    }

    [LoggerMessage(Level = LogLevel.Warning, Message = "The days that are over could not be kept: {Why}")]
    private partial void LogNotKept(string why);
}
