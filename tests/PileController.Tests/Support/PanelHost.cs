using System.Net.Http.Json;
using System.Text.Json;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;
using PileController.Control;
using PileController.Ledgers;
using PileController.Panel;
using PileController.Panel.Planning;
using PileController.Records;
using PileController.Rigs;
using PileController.Service;
using PileController.Settings;

namespace PileController.Tests.Support;

/// <summary>The panel and the loop in a real server on a free port of the loopback, over a made-up rig.</summary>
public sealed class PanelHost : IAsyncDisposable
{
    public static readonly DateTimeOffset Begins = new(2013, 1, 28, 5, 10, 0, TimeSpan.Zero);

    private readonly WebApplication _app;

    private PanelHost(string folder, WebApplication app, FakeRig rig, FakeRecord record, CannedControl control, SampleSketch sketch, SampleSeasons seasons)
    {
        Folder = folder;
        Seasons = seasons;
        Sketch = sketch;
        _app = app;
        Rig = rig;
        Record = record;
        Control = control;
        Address = app.Urls.First();
        Client = new HttpClient { BaseAddress = new Uri(Address) };
    }

    public FakeRig Rig { get; }

    public FakeRecord Record { get; }

    public CannedControl Control { get; }

    public SampleSketch Sketch { get; }

    public SampleSeasons Seasons { get; }

    public string Address { get; }

    /// <summary>The folder of the book.</summary>
    public string Folder { get; }

    public HttpClient Client { get; }

    public PanelFeed Feed => _app.Services.GetRequiredService<PanelFeed>();

    internal PlanDesk Desk => _app.Services.GetRequiredService<PlanDesk>();

    /// <summary>Starts a host and waits for its first tick.</summary>
    /// <param name="simulated">Whether faults can be put in.</param>
    /// <param name="speed">How fast the clock runs.</param>
    /// <param name="settings">The settings; Alder Bank's when null.</param>
    /// <param name="lamp">The lamp that fails on, or null.</param>
    public static async Task<PanelHost> StartAsync(
        bool simulated = true, double speed = 60, PileSettings? settings = null, IAlarmLamp? lamp = null)
    {
        FakeRig rig = new() { Reads = MadeUp.Readings };
        FakeRecord record = new();
        string folder = Directory.CreateTempSubdirectory("pile-panel-").FullName;
        CannedControl control = new();
        SampleSketch sketch = new();
        SampleSeasons seasons = new();
        ControlSettings told = new();
        WebApplicationBuilder builder = WebApplication.CreateSlimBuilder();
        builder.WebHost.UseUrls("http://127.0.0.1:0");
        builder.Logging.ClearProviders();
        builder.Services.AddSingleton<IRig>(rig);
        builder.Services.AddSingleton<IPileRecord>(record);
        builder.Services.AddTicks(
            new TickSettings { Control = told, OffsetMinutes = -300, Step = control.Step },
            new SpedClock(TimeProvider.System, Begins, speed));
        builder.Services.AddPanel(new PanelSetup
        {
            Demo = true,
            Speed = speed,
            OffsetMinutes = -300,
            Control = told,
            Settings = settings ?? PileSettings.AlderBank,
            AlarmsFile = Path.Combine(folder, "alarms.json"),
            Lamp = lamp,
            Interlocks = MadeUp.Interlocks,
            Faults = simulated ? rig : null,
            Sketch = sketch.Of,
            Season = seasons.Run,
            Ledger = new LedgerDesk(folder, record, _ => null, PileSettings.AlderBank),
        });
        WebApplication app = builder.Build();
        PanelModule.Map(app);
        await app.StartAsync();
        PanelHost host = new(folder, app, rig, record, control, sketch, seasons);
        await host.Feed.AfterAsync(0, CancellationToken.None);
        return host;
    }

    /// <summary>Waits for a tick after the newest.</summary>
    public async Task<TickNews> NextTickAsync()
    {
        // Two on: the one that runs now may have drained its commands already.
        TickNews next = await Feed.AfterAsync(Feed.Latest!.Sequence, CancellationToken.None);
        return await Feed.AfterAsync(next.Sequence, CancellationToken.None);
    }

    public async Task<JsonElement> GetAsync(string path) => await Client.GetFromJsonAsync<JsonElement>(path);

    /// <summary>Stops the host as a service manager would.</summary>
    public Task StopAsync() => _app.StopAsync();

    public async ValueTask DisposeAsync()
    {
        Client.Dispose();
        Sketch.Gate.Set();
        await _app.StopAsync();
        await _app.DisposeAsync();
        Directory.Delete(Folder, recursive: true);
    }
}
