using PileController.Service;
using PileController.Settings;

namespace PileController.Alarms.Push;

/// <summary>Tells people of alarms: by webhook, by mail, whichever are set. Runs beside the loop.</summary>
internal sealed class AlarmPush(
    AlarmDesk desk, AlarmsSettings settings, string holding, IReadOnlyList<IPushSink> sinks, TimeProvider time, PushTroubles troubles,
    ILogger<AlarmPush> logger) : BesideService(logger)
{
    private readonly PushLine[] _lines = [.. sinks.Select(sink => new PushLine(sink, holding, time, troubles.Set))];

    /// <inheritdoc/>
    public override Task StartAsync(CancellationToken cancellationToken)
    {
        desk.Happened += Take;
        return base.StartAsync(cancellationToken);
    }

    /// <inheritdoc/>
    public override Task StopAsync(CancellationToken cancellationToken)
    {
        desk.Happened -= Take;
        return base.StopAsync(cancellationToken);
    }

    /// <inheritdoc/>
    public override void Dispose()
    {
        foreach (IDisposable sink in sinks.OfType<IDisposable>())
        {
            sink.Dispose();
        }

        base.Dispose();
    }

    /// <inheritdoc/>
    protected override Task RunAsync(CancellationToken stopping) => Task.WhenAll(_lines.Select(line => line.RunAsync(stopping)));

    private void Take(IReadOnlyList<AlarmEvent> events)
    {
        PushItem[] items = [.. events.Select(one => PushItem.Of(desk.Table, one, settings.Least)).OfType<PushItem>()];
        foreach (PushLine line in items.Length > 0 ? _lines : [])
        {
            line.Post(items);
        }
    }
}
