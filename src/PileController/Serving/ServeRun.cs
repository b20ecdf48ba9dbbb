using PileController.Control;
using PileController.Records;
using PileController.Rigs;
using PileController.Rigs.Faults;
using PileController.Rigs.Hardware;
using PileController.Service;
using PileController.Settings;
using PileController.Settings.Changes;
using PileController.Simulation;

namespace PileController.Serving;

/// <summary>Runs the controller and its page until it is told to stop.</summary>
internal static class ServeRun
{
    public static async Task RunAsync(ServeOptions options, TextWriter output, CancellationToken cancellation)
    {
        string? passing = options.DataDirectory is null ? Directory.CreateTempSubdirectory("pile-").FullName : null;
        try
        {
            DataFolder folder = new(options.DataDirectory ?? passing!);
            Directory.CreateDirectory(folder.Path);
            SettingsDesk desk = folder.OpenDesk(options.SettingsText);

            // Opened once: a change of settings signs nobody out, and the demo keeps its passphrase.
            using RunAccess access = RunAccess.Open(options.Settings, folder.Path);
            bool first = true;
            while (true)
            {
                try
                {
                    await RunOnceAsync(options, desk, access, folder, first, output, cancellation);
                    if (!desk.Asked)
                    {
                        return;
                    }

                    desk.Renew();
                }
                catch (Exception fault) when (fault is IOException or RigFaultException && desk.TakeBack(fault.Message))
                {
                    // A change that keeps the heat off is worse than none: the settings before it run on.
                    output.WriteLine(desk.Trouble);
                }

                first = false;
            }
        }
        finally
        {
            if (passing is not null)
            {
                Directory.Delete(passing, recursive: true);
            }
        }
    }

    private static async Task RunOnceAsync(
        ServeOptions options, SettingsDesk desk, RunAccess access, DataFolder folder, bool first, TextWriter output, CancellationToken cancellation)
    {
        PileSettings settings = desk.Effective;
        folder.KeepSettings(settings.Fingerprint(), desk.Text);
        await using LiteRecord record = LiteRecord.Open(RecordOf(settings, folder));
        ServeParts parts = await PartsAsync(options with { Settings = settings }, folder, record, output, cancellation);
        await using IRig rig = parts.Rig;
        await using WebApplication app = ServeHost.Build(parts with { Desk = desk }, options.Urls, access.Desk, options.Certificate);
        await app.StartAsync(cancellation);
        desk.Confirm();
        if (first)
        {
            Say(options, desk, app, access, output);
        }

        await app.WaitForShutdownAsync(cancellation);
    }

    private static RecordOptions RecordOf(PileSettings settings, DataFolder folder) => new()
    {
        DataDirectory = folder.Path,
        Origin = DataFolder.Origin(settings),
        KeepTicks = RecordSettings.Ticks(settings.Record.KeepDays, settings.Control.TickSeconds),
        KeepMinuteTicks = RecordSettings.Ticks(settings.Record.KeepMinutesDays, settings.Control.TickSeconds),
    };

    private static async Task<ServeParts> PartsAsync(
        ServeOptions options, DataFolder folder, LiteRecord record, TextWriter output, CancellationToken cancellation)
    {
        PileSettings settings = options.Settings;
        if (settings.Rig.Simulated)
        {
            FaultBoard faults = new(settings.Rig.Faults);
            Holding holding = await SimulatedSite.OpenAsync(settings, folder, record, faults, output, cancellation);
            long now = holding.Plant.UtcMilliseconds;
            SpedClock clock = new(TimeProvider.System, DateTimeOffset.FromUnixTimeMilliseconds(now), options.Speed);
            return new ServeParts(
                settings, new KeptRig(holding, settings, folder), record, holding.Memory, now, clock, options.Speed,
                HoldingBuild.StandardOffsetMinutes(settings), new FaultSwitches(faults), folder);
        }

        Memory start = (await record.LastMemoryAsync(cancellation))?.AfterRestart() ?? Memory.Fresh;
        long utc = TimeProvider.System.GetUtcNow().ToUnixTimeMilliseconds();
        GpioRig hardware = ServeHost.OpenHardware(settings.Rig, output.WriteLine);
        IRig rig = hardware;
        if (settings.Rig.Faults.Count > 0)
        {
            rig = new FaultyRig(hardware, new FaultBoard(settings.Rig.Faults));
        }

        return new ServeParts(settings, rig, record, start, 0, TimeProvider.System, 1, settings.Site.OffsetMinutesAt(utc), null, folder,
            hardware.Lamp);
    }

    private static void Say(ServeOptions options, SettingsDesk desk, WebApplication app, RunAccess access, TextWriter output)
    {
        if (desk.Trouble is { } trouble)
        {
            output.WriteLine(trouble);
        }

        if (desk.Book.Values.Count > 0)
        {
            output.WriteLine($"Changed on the page, over the settings file: {string.Join(", ", desk.Book.Values.Keys)}.");
        }

        if (options.Settings.Rig.Simulated)
        {
            output.WriteLine(
                $"{options.Settings.Site.Name}: a simulated heap. {Demo.HistoryDays} days of history are made; time runs {options.Speed:0.#} times faster than life.");
        }

        output.WriteLine(access.Line);
        foreach (string url in app.Urls)
        {
            output.WriteLine($"The page is at {url}");
        }

        output.WriteLine("Stop with Ctrl+C.");
        output.Flush();
    }
}
