using PileController.Control.Decisions;
using PileController.Service;

namespace PileController.Forecasts;

/// <summary>Hands the forecast of a file to the loop, at the start and whenever the file has changed, else once a day.</summary>
internal sealed partial class ForecastWatch(
    ForecastFile file, CommandInbox inbox, PanelFeed feed, TimeProvider realTime, ILogger<ForecastWatch> logger)
    : BesideService(logger)
{
    private static readonly TimeSpan Every = TimeSpan.FromSeconds(20);

    // A file may reach further than one forecast does: what is left of it is taken again each day.
    private const long AgainMilliseconds = 24 * 3_600_000L;

    private const int MostCharacters = 1_000_000;

    private DateTime _seen;
    private long _takenUtcMilliseconds;
    private string? _unread;

    /// <inheritdoc/>
    protected override async Task RunAsync(CancellationToken stopping)
    {
        // The file is cut to the place's own time, which the first tick tells.
        await feed.AfterAsync(0, stopping).ConfigureAwait(false);
        using PeriodicTimer timer = new(Every, realTime);
        do
        {
            Look();
        }
        while (await timer.WaitForNextTickAsync(stopping).ConfigureAwait(false));
    }

    /// <summary>Looks once.</summary>
    internal void Look()
    {
        try
        {
            DateTime written = File.GetLastWriteTimeUtc(file.Path);
            long now = feed.Latest!.Decision.At.UtcMilliseconds;
            if (written == _seen && Math.Abs(now - _takenUtcMilliseconds) < AgainMilliseconds)
            {
                return;
            }

            string text = ReadBounded(file.Path);
            (_seen, _takenUtcMilliseconds, _unread) = (written, now, null);
            Take(text, now);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            // Said once, not at every look.
            if (_unread != e.Message)
            {
                _unread = e.Message;
                LogUnread(file.Path, e.Message);
            }
        }
    }

    // A device or a log that somebody named by mistake never ends.
    private static string ReadBounded(string path)
    {
        using StreamReader reader = new(path);
        char[] text = new char[MostCharacters + 1];
        int length = reader.ReadBlock(text, 0, text.Length);
        return length <= MostCharacters
            ? new string(text, 0, length)
            : throw new IOException($"It is longer than {MostCharacters} characters, more than any forecast needs.");
    }

    private void Take(string text, long now)
    {
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
