using PileController.Rigs;
using PileController.Settings;
using PileController.Tests.Service;
using PileController.Tests.Support;

namespace PileController.Tests.Alarms.Push;

/// <summary>All of it in one host: what the settings name is told of an alarm, and nothing else is.</summary>
public sealed class HostedTests
{
    [Fact]
    public async Task Host_WithWebhookHeartbeatAndLamp_TellsAllThree()
    {
        await using LocalHttp hook = await LocalHttp.StartAsync();
        await using LocalHttp life = await LocalHttp.StartAsync();
        FakeLamp lamp = new();
        PileSettings settings = PileSettings.AlderBank with
        {
            Alarms = new AlarmsSettings
            {
                Webhook = hook.Address.ToString(),
                Heartbeat = new HeartbeatSettings { Url = life.Address.ToString() },
            },
        };
        await using PanelHost host = await PanelHost.StartAsync(speed: 600, settings: settings, lamp: lamp);

        await LoopBench.UntilAsync(() => lamp.Said.Contains(true));
        host.Control.Trip = "noFlow";
        await LoopBench.UntilAsync(() => Told(hook).Contains("noFlow") && !life.Bodies.IsEmpty && !lamp.Said[^1]);
        Assert.Contains("tonightPoor", Told(hook));
        Assert.True(life.Bodies.First().GetProperty("tick").GetInt64() > 0);
    }

    [Fact]
    public async Task Host_Stopped_LetsTheLampBurnAndKeepsItsAlarms()
    {
        FakeLamp lamp = new();
        await using PanelHost host = await PanelHost.StartAsync(speed: 600, lamp: lamp);
        await LoopBench.UntilAsync(() => lamp.Said.Contains(true));
        await host.StopAsync();
        Assert.False(lamp.Said[^1]);
        Assert.Contains("tonightPoor", await File.ReadAllTextAsync(Path.Combine(host.Folder, "alarms.json")), StringComparison.Ordinal);
    }

    private static List<string?> Told(LocalHttp hook) =>
        [.. hook.Bodies.SelectMany(body => body.GetProperty("alarms").EnumerateArray()).Select(one => one.GetProperty("key").GetString())];

    private sealed class FakeLamp : IAlarmLamp
    {
        private readonly Lock _gate = new();
        private readonly List<bool> _said = [];

        public IReadOnlyList<bool> Said
        {
            get
            {
                lock (_gate)
                {
                    return [.. _said];
                }
            }
        }

        public void Say(bool allIsWell)
        {
            lock (_gate)
            {
                _said.Add(allIsWell);
            }
        }
    }
}
