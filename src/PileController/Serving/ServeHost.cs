using System.Device.Gpio;
using PileController.Access;
using PileController.Commissioning.Sheets;
using PileController.Forecasts;
using PileController.Ledgers;
using PileController.Panel;
using PileController.Records;
using PileController.Rigs.Hardware;
using PileController.Service;
using PileController.Settings;
using PileController.Units;
using PileController.Watch;

namespace PileController.Serving;

/// <summary>Puts rig, record, tick loop and page together.</summary>
internal static class ServeHost
{
    private const string HostLog = "Microsoft.Extensions.Hosting.Internal.Host";

    /// <summary>Builds the host. The rig's outputs are safe before anything else of it starts.</summary>
    public static WebApplication Build(ServeParts parts, string urls, AccessDesk access, RenewedCertificate? certificate)
    {
        WebApplicationBuilder builder = WebApplication.CreateSlimBuilder();
        if (certificate is not null)
        {
            builder.WebHost.UseKestrelHttpsConfiguration();
            builder.WebHost.ConfigureKestrel(kestrel =>
            {
                ILogger logger = kestrel.ApplicationServices.GetRequiredService<ILogger<RenewedCertificate>>();
                kestrel.ConfigureHttpsDefaults(https => https.ServerCertificateSelector = (_, _) => certificate.Current(logger));
            });
        }

        // No stray file or environment variable may open another door: what is served is what was checked.
        builder.Configuration.Sources.Clear();
        builder.Configuration.AddInMemoryCollection();
        // A start that fails is told by the command in a sentence; the host's own account of it would come on top.
        bool started = false;
        builder.Logging.ClearProviders().AddSimpleConsole(options => options.SingleLine = true).SetMinimumLevel(LogLevel.Warning)
            .AddFilter(HostLog, level => started && level >= LogLevel.Warning);
        builder.WebHost.UseUrls(urls.Split(';'));
        builder.Services.AddSingleton(parts.Rig);
        builder.Services.AddSingleton<IPileRecord>(parts.Record);
        builder.Services.AddTicks(
            new TickSettings
            {
                Control = parts.Settings.Control,
                Start = parts.Start,
                StartMonotonicMilliseconds = parts.StartMonotonicMilliseconds,
                OffsetMinutesAt = parts.OffsetMinutesAt,
                Restarts = parts.Restarts,
                Fitted = [.. parts.Settings.Rig.Probes.Select(p => p.Channel)],
            },
            parts.Clock);
        builder.Services.AddHostedService(provider => ActivatorUtilities.CreateInstance<WatchFeed>(provider, parts.Signs, TimeProvider.System));
        builder.Services.AddPanel(new PanelSetup
        {
            Holding = parts.Settings.Site.Name,
            Demo = parts.Faults is not null,
            Speed = parts.Speed,
            OffsetMinutesAt = parts.OffsetMinutesAt,
            Zone = parts.Settings.Rig.Simulated ? null : parts.Settings.Site.Zone,
            Units = parts.Settings.Units == UnitSystem.Metric ? PanelUnits.Metric : PanelUnits.American,
            Control = parts.Settings.Control,
            Heap = parts.Settings.Heap,
            Rig = parts.Settings.Rig,
            Faults = parts.Faults,
            Settings = parts.Settings,
            Desk = parts.Desk,
            ControlOf = hash => parts.Folder.FindSettings(hash)?.Control,
            AlarmsFile = Path.Combine(parts.Folder.Path, "alarms.json"),
            Lamp = parts.Lamp,
            Sheet = new SheetFile(parts.Folder.Path),
            Ledger = new LedgerDesk(parts.Folder.Path, parts.Record, parts.Folder.FindSettings, parts.Settings),
        }, access);
        if (parts.Settings.Forecast.File is { Length: > 0 } path)
        {
            builder.Services.AddSingleton(new ForecastFile(path));
            builder.Services.AddSingleton(TimeProvider.System);
            builder.Services.AddHostedService<ForecastWatch>();
        }

        WebApplication app = builder.Build();
        app.Lifetime.ApplicationStarted.Register(() => started = true);
        PanelModule.Map(app);
        return app;
    }

    /// <summary>The real rig.</summary>
    public static GpioRig OpenHardware(PileSettings settings, Action<string> report)
    {
        GpioController controller = GpioChips.Open(settings.Rig.Hardware.GpioChipLabel);
        try
        {
            return new GpioRig(controller, settings.Rig, Derived.Motion(settings), TimeProvider.System, report);
        }
        catch (Exception)
        {
            // The lines go, or the settings that are taken up again instead find them busy.
            controller.Dispose();
            throw;
        }
    }
}
