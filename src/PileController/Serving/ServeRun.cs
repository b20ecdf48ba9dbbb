using PileController.Control;
using PileController.Records;
using PileController.Rigs;
using PileController.Rigs.Faults;
using PileController.Rigs.Hardware;
using PileController.Service;
using PileController.Settings;
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
            folder.KeepSettings(options.Settings.Fingerprint(), options.SettingsText);
            await using LiteRecord record = LiteRecord.Open(RecordOf(options.Settings, folder));
            ServeParts parts = await PartsAsync(options, folder, record, output, cancellation);
            await using IRig rig = parts.Rig;
            await using WebApplication app = ServeHost.Build(parts, options.Urls);
            await app.StartAsync(cancellation);
            Say(options, app, output);
            await app.WaitForShutdownAsync(cancellation);
        }
        finally
        {
            if (passing is not null)
            {
                Directory.Delete(passing, recursive: true);
            }
        }
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

    private static void Say(ServeOptions options, WebApplication app, TextWriter output)
    {
        if (options.Settings.Rig.Simulated)
        {
            output.WriteLine(
                $"{options.Settings.Site.Name}: a simulated heap. {Demo.HistoryDays} days of history are made; time runs {options.Speed:0.#} times faster than life.");
        }

        foreach (string url in app.Urls)
        {
            output.WriteLine($"The page is at {url}");
        }

        output.WriteLine("Stop with Ctrl+C.");
        output.Flush();
    }
}
