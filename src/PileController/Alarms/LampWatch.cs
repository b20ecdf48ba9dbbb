using PileController.Rigs;
using PileController.Service;

namespace PileController.Alarms;

/// <summary>Says to the lamp, every second, whether all is well: no alarm of high priority stands, and ticks come on time.</summary>
internal sealed class LampWatch(
    IAlarmLamp lamp, AlarmDesk desk, PanelFeed feed, Punctuality punctuality, TimeProvider time, ILogger<LampWatch> logger)
    : BesideService(logger)
{
    private static readonly TimeSpan Every = TimeSpan.FromSeconds(1);

    /// <inheritdoc/>
    protected override async Task RunAsync(CancellationToken stopping)
    {
        try
        {
            using PeriodicTimer timer = new(Every, time);
            do
            {
                lamp.Say(!desk.Count.HighStands && punctuality.OnTime(feed.Age));
            }
            while (await timer.WaitForNextTickAsync(stopping).ConfigureAwait(false));
        }
        finally
        {
            lamp.Say(false);
        }
    }
}
