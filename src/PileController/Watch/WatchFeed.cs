using PileController.Control.Readings;
using PileController.Records;
using PileController.Service;

namespace PileController.Watch;

/// <summary>
/// Tells those who watch from outside, second by second, whether the service proves its health. It runs beside the loop
/// and asks what the loop has shown; were it to die with the whole program hung, that silence is the sign.
/// </summary>
internal sealed partial class WatchFeed(
    IReadOnlyList<ISignOfLife> signs, TimeProvider trueTime, PanelFeed feed, TickCounts counts, Punctuality punctuality, IPileRecord record,
    ILogger<WatchFeed> logger) : BackgroundService
{
    private static readonly TimeSpan Beat = TimeSpan.FromSeconds(1);

    private long? _answeredAt;
    private string? _said;

    /// <summary>Looks once and tells.</summary>
    internal void Look()
    {
        if (feed.Latest is { } news && Answers(news.Raw))
        {
            _answeredAt = trueTime.GetTimestamp();
        }

        string? sickness = Health.Sickness(new VitalSigns(
            punctuality.OnTime(feed.Age), counts.RigAnswers, counts.RigObeys, record.Health,
            _answeredAt is { } at ? trueTime.GetElapsedTime(at) : null));
        foreach (ISignOfLife sign in signs)
        {
            sign.Say(sickness);
        }

        if (sickness != _said)
        {
            _said = sickness;
            if (sickness is not null)
            {
                LogSick(sickness);
            }
        }
    }

    /// <inheritdoc/>
    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        using PeriodicTimer timer = new(Beat, trueTime);
        while (await timer.WaitForNextTickAsync(stoppingToken).ConfigureAwait(false))
        {
            Look();
        }
    }

    private static bool Answers(RigReadings readings)
    {
        foreach (Reading reading in readings.AsSpan())
        {
            if (reading.Quality is not (ReadingQuality.NoAnswer or ReadingQuality.NotFitted))
            {
                return true;
            }
        }

        return false;
    }

    [LoggerMessage(Level = LogLevel.Error, Message = "No sign of life is given: {Sickness}")]
    private partial void LogSick(string sickness);
}
