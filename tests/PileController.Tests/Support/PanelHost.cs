using System.Net;
using System.Net.Http.Json;
using System.Text;
using System.Text.Json;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;
using PileController.Access;
using PileController.Commissioning.Sheets;
using PileController.Control;
using PileController.Ledgers;
using PileController.Panel;
using PileController.Panel.Guard;
using PileController.Panel.Planning;
using PileController.Records;
using PileController.Rigs;
using PileController.Service;
using PileController.Settings;
using PileController.Settings.Changes;

namespace PileController.Tests.Support;

/// <summary>The panel and the loop in a real server on a free port of the loopback, over a made-up rig.</summary>
public sealed class PanelHost : IAsyncDisposable
{
    /// <summary>Local time minus UTC at the place, minutes.</summary>
    public const int OffsetMinutes = -300;

    public static readonly DateTimeOffset Begins = new(2013, 1, 28, 5, 10, 0, TimeSpan.Zero);

    // Hashes as slow as real ones would make a thousand tries last minutes.
    private const int FewIterations = 1000;

    private readonly WebApplication _app;

    private PanelHost(
        string folder, WebApplication app, LogLines log, AccessDesk access, FakeRig rig, FakeRecord record, CannedControl control, SampleSketch sketch, SampleSeasons seasons)
    {
        Folder = folder;
        Access = access;
        Log = log;
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

    internal AccessDesk Access { get; }

    /// <summary>The folder of the book.</summary>
    public string Folder { get; }

    public HttpClient Client { get; }

    /// <summary>What went to the log as a warning or worse.</summary>
    internal LogLines Log { get; }

    /// <summary>Every route with its method, the parts of its path as they are written; HEAD is the same as its GET.</summary>
    internal IReadOnlyList<(string Method, string Path)> Routes() =>
    [
        .. ((IEndpointRouteBuilder)_app).DataSources.SelectMany(source => source.Endpoints).OfType<RouteEndpoint>()
            .SelectMany(route => (route.Metadata.GetMetadata<HttpMethodMetadata>()?.HttpMethods ?? ["GET"])
                .Where(method => method != "HEAD").Select(method => (method, "/" + route.RoutePattern.RawText!.Trim('/')))),
    ];

    /// <summary>Why a call from another machine, over https, is turned away from a route; null when it is let in.</summary>
    internal Refusal? RefusedFromAfar(string method, string path, string? key)
    {
        DefaultHttpContext context = Afar(method, path, key);
        context.Request.Scheme = "https";
        return EntryGate.Check(context, Access).Refusal;
    }

    /// <summary>What a GET from another machine is answered, through the guard; the host's own client always is at this one.</summary>
    internal async Task<(int Status, string Body)> GetFromAfarAsync(string path, string? key = null)
    {
        using MemoryStream body = new();
        DefaultHttpContext context = Afar("GET", path, key);
        context.Response.Body = body;
        await GuardMiddleware.RunAsync(context, context.GetEndpoint()!.RequestDelegate!, Access);
        return (context.Response.StatusCode, Encoding.UTF8.GetString(body.ToArray()));
    }

    private DefaultHttpContext Afar(string method, string path, string? key)
    {
        RouteEndpoint route = ((IEndpointRouteBuilder)_app).DataSources.SelectMany(source => source.Endpoints).OfType<RouteEndpoint>()
            .First(one => "/" + one.RoutePattern.RawText!.Trim('/') == path
                && (one.Metadata.GetMetadata<HttpMethodMetadata>()?.HttpMethods ?? ["GET"]).Contains(method));
        DefaultHttpContext context = new() { RequestServices = _app.Services };
        context.Connection.RemoteIpAddress = IPAddress.Parse("192.168.1.7");
        context.Connection.LocalIpAddress = IPAddress.Parse("192.168.1.4");
        context.Request.Method = method;
        context.Request.Scheme = "http";
        context.Request.Host = new HostString("192.168.1.4");
        context.Request.Path = path;
        context.SetEndpoint(route);
        if (key is not null)
        {
            context.Request.Headers.Authorization = $"Bearer {key}";
        }

        return context;
    }

    public PanelFeed Feed => _app.Services.GetRequiredService<PanelFeed>();

    internal PlanDesk Desk => _app.Services.GetRequiredService<PlanDesk>();

    /// <summary>Starts a host and waits for its first tick.</summary>
    /// <param name="simulated">Whether faults can be put in.</param>
    /// <param name="speed">How fast the clock runs.</param>
    /// <param name="passphrase">The passphrase that is set, or null for none.</param>
    /// <param name="settings">The settings; Alder Bank's when null.</param>
    /// <param name="lamp">The lamp that fails on, or null.</param>
    public static Task<PanelHost> StartAsync(
        bool simulated = true, double speed = 60, string? passphrase = null, PileSettings? settings = null, IHeldLine? lamp = null) =>
        StartAsync(simulated, speed, passphrase, access => access, settings, lamp);

    internal static async Task<PanelHost> StartAsync(
        bool simulated, double speed, string? passphrase, Func<AccessSetup, AccessSetup> access, PileSettings? settings = null, IHeldLine? lamp = null)
    {
        FakeRig rig = new() { Reads = MadeUp.Readings };
        FakeRecord record = new();
        string folder = Directory.CreateTempSubdirectory("pile-panel-").FullName;
        CannedControl control = new();
        SampleSketch sketch = new();
        SampleSeasons seasons = new();
        SettingsDesk desk = new(SettingsFile.Explain(PileSettings.AlderBank), null, (_, text) => File.WriteAllText(Path.Combine(folder, SettingsDesk.FileName), text));
        ControlSettings told = new();
        AccessDesk door = new(access(new AccessSetup(folder, TimeProvider.System)
        {
            ForThisRun = passphrase is null ? null : new(SecretHash.Of(passphrase, FewIterations)),
        }));
        WebApplicationBuilder builder = WebApplication.CreateSlimBuilder();
        builder.WebHost.UseUrls("http://127.0.0.1:0");
        builder.Logging.ClearProviders();
        LogLines log = new();
        builder.Logging.AddProvider(log);
        builder.Services.AddSingleton<IRig>(rig);
        builder.Services.AddSingleton<IPileRecord>(record);
        builder.Services.AddTicks(
            new TickSettings { Control = told, OffsetMinutesAt = _ => OffsetMinutes, Step = control.Step },
            new SpedClock(TimeProvider.System, Begins, speed));
        builder.Services.AddPanel(new PanelSetup
        {
            Demo = true,
            Speed = speed,
            OffsetMinutesAt = _ => OffsetMinutes,
            Control = told,
            Settings = settings ?? PileSettings.AlderBank,
            AlarmsFile = Path.Combine(folder, "alarms.json"),
            Lamp = lamp,
            Interlocks = MadeUp.Interlocks,
            Faults = simulated ? rig : null,
            Sketch = sketch.Of,
            Season = seasons.Run,
            Sheet = new SheetFile(folder),
            Ledger = new LedgerDesk(folder, record, _ => null, PileSettings.AlderBank),
            Desk = desk,
            ControlOf = _ => told,
        }, door);
        WebApplication app = builder.Build();
        PanelModule.Map(app);
        await app.StartAsync();
        PanelHost host = new(folder, app, log, door, rig, record, control, sketch, seasons);
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

    /// <summary>Signs the client in: it then sends the cookie, the token and where it comes from by itself, as a page does.</summary>
    public async Task SignInAsync(string passphrase, string name = "Robin")
    {
        Client.DefaultRequestHeaders.Remove("Origin");
        Client.DefaultRequestHeaders.Add("Origin", Address);
        using HttpResponseMessage answer = await Client.PostAsJsonAsync("/api/session", new { passphrase, name });
        JsonElement session = await answer.EnsureSuccessStatusCode().Content.ReadFromJsonAsync<JsonElement>();
        Client.DefaultRequestHeaders.Remove("X-Pile-Token");
        Client.DefaultRequestHeaders.Add("X-Pile-Token", session.GetProperty("token").GetString());
    }

    public async Task<JsonElement> GetAsync(string path) => await Client.GetFromJsonAsync<JsonElement>(path);

    /// <summary>Ends once something has told the host to stop.</summary>
    public Task Stopping
    {
        get
        {
            TaskCompletionSource told = new(TaskCreationOptions.RunContinuationsAsynchronously);
            _app.Lifetime.ApplicationStopping.Register(told.SetResult);
            return told.Task.WaitAsync(TimeSpan.FromSeconds(30));
        }
    }

    /// <summary>Stops the host as a service manager would.</summary>
    public Task StopAsync() => _app.StopAsync();

    public async ValueTask DisposeAsync()
    {
        Client.Dispose();
        Sketch.Gate.Set();
        await _app.StopAsync();
        await _app.DisposeAsync();
        Access.Dispose();
        Directory.Delete(Folder, recursive: true);
    }
}
