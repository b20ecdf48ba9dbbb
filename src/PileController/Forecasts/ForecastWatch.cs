using PileController.Control.Decisions;
using PileController.Service;

namespace PileController.Forecasts;

/// <summary>Hands the forecast of a file to the loop, at the start and whenever the file has changed.</summary>
internal sealed partial class ForecastWatch(
    ForecastFile file, CommandInbox inbox, PanelFeed feed, TimeProvider realTime, ILogger<ForecastWatch> logger) : BackgroundService
{
    private static readonly TimeSpan Every = TimeSpan.FromSeconds(20);
    private DateTime _seen;

    /// <inheritdoc/>
    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        // The file is cut to the place's own time, which the first tick tells.
        await feed.AfterAsync(0, stoppingToken).ConfigureAwait(false);
        using PeriodicTimer timer = new(Every, realTime);
        do
        {
            Look();
        }
        while (await timer.WaitForNextTickAsync(stoppingToken).ConfigureAwait(false));
    }

    /// <summary>Looks once.</summary>
    internal void Look()
    {
        try
        {
            DateTime written = File.GetLastWriteTimeUtc(file.Path);
            if (written == _seen)
            {
                return;
            }

            string text = File.ReadAllText(file.Path);
            _seen = written;
            Take(text);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            LogUnread(file.Path, e.Message);
        }
    }

    private void Take(string text)
    {
        long now = feed.Latest!.Decision.At.UtcMilliseconds;
        if (!ForecastText.TryRead(text, Path.GetFileName(file.Path), out ForecastSeries? series, out string? fault))
        {
            LogRefused(file.Path, fault);
        }
        else if (series.At(now) is not { } forecast)
        {
            LogRefused(file.Path, "All its hours have passed.");
        }
        else if (forecast.Fault(now) is { } wrong)
        {
            LogRefused(file.Path, wrong);
        }
        else if (!inbox.TryPost(new TakeForecast(forecast), out _))
        {
            // Too many commands wait: the file is looked at again next time.
            _seen = default;
        }
    }

    [LoggerMessage(Level = LogLevel.Warning, Message = "The forecast {Path} cannot be read: {Why}")]
    private partial void LogUnread(string path, string why);

    [LoggerMessage(Level = LogLevel.Warning, Message = "The forecast {Path} is not taken: {Why}")]
    private partial void LogRefused(string path, string why);
}

/// <summary>Where the forecast's file is.</summary>
/// <param name="Path">Its path.</param>
internal sealed record ForecastFile(string Path);
