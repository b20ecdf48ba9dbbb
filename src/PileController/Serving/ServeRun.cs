using PileController.Control;
using PileController.Records;
using PileController.Rigs;
using PileController.Rigs.Faults;
using PileController.Rigs.Hardware;
using PileController.Service;
using PileController.Settings;
using PileController.Settings.Changes;
using PileController.Simulation;
using PileController.Watch;

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
            Standing standing = new(options, desk, access, folder, Supervisor.Find(), StartBook.Of(folder.Path));
            foreach (string left in standing.Starts.LeftOn())
            {
                output.WriteLine($"At its last end the program could not switch everything off: {left} Look at that output before you rely on it.");
            }

            try
            {
                await RunAsync(standing, output, cancellation);
                standing.Supervisor.Stopping();
            }
            catch (Exception fault) when (standing.LeftOn.Count > 0)
            {
                // What is on still outweighs whatever else went wrong.
                output.WriteLine(fault.Message);
            }
            catch (Exception) when (!standing.Ran || cancellation.IsCancellationRequested)
            {
                // What never ran has not died, and what was told to end has ended in order.
                standing.Starts.Ended([]);
                throw;
            }

            standing.Starts.Ended(standing.LeftOn);
            if (standing.LeftOn.Count > 0)
            {
                throw new RigFaultException($"Not all outputs could be switched off at the end. {string.Join(" ", standing.LeftOn)} Cut their supply by hand.");
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

    private static async Task RunAsync(Standing standing, TextWriter output, CancellationToken cancellation)
    {
        SettingsDesk desk = standing.Desk;
        while (true)
        {
            try
            {
                await RunOnceAsync(standing, !standing.Ran, output, cancellation);
            }
            catch (Exception fault) when (desk.Tried && !cancellation.IsCancellationRequested)
            {
                // A change that keeps the heat off is worse than none: the settings before it run on.
                desk.TakeBack(fault.Message);
                output.WriteLine(desk.Trouble);
                continue;
            }
            catch (Exception fault) when (desk.Asked && !cancellation.IsCancellationRequested)
            {
                // The old host stumbled at its end; that is no fault of the change.
                output.WriteLine($"At the stop before a change of settings: {fault.Message}");
            }

            if (!desk.Asked)
            {
                return;
            }

            desk.Renew();
        }
    }

    private static async Task RunOnceAsync(Standing standing, bool first, TextWriter output, CancellationToken cancellation)
    {
        PileSettings settings = standing.Desk.Effective;

        // Before anything else: opening the lines puts them at their safe value.
        GpioRig? hardware = settings.Rig.Simulated ? null : standing.Options.OpenHardware(settings, output.WriteLine);
        standing.LeftOn = [];
        try
        {
            await RunOnceAsync(standing, settings, hardware, first, output, cancellation);
        }
        finally
        {
            if (hardware is not null)
            {
                await hardware.DisposeAsync();
                standing.LeftOn = hardware.LeftOn;
            }
        }
    }

    private static async Task RunOnceAsync(
        Standing standing, PileSettings settings, GpioRig? hardware, bool first, TextWriter output, CancellationToken cancellation)
    {
        standing.Folder.KeepSettings(settings.Fingerprint(), standing.Desk.Text);
        await using LiteRecord record = LiteRecord.Open(RecordOf(settings, standing.Folder));

        // Only now is the folder this program's own.
        int restarts = first ? standing.Starts.Started() : 0;
        ServeParts parts = hardware is null
            ? await SimulatedAsync(standing, settings, record, output, cancellation)
            : await RealAsync(standing, settings, hardware, record, cancellation);
        await using IRig rig = parts.Rig;
        await using WebApplication app = ServeHost.Build(
            parts with { Desk = standing.Desk, Signs = hardware?.Pulse is { } pulse ? [standing.Supervisor, new PulseSign(pulse)] : [standing.Supervisor], Restarts = restarts },
            standing.Options.Urls, standing.Access.Desk, standing.Options.Certificate);
        await app.StartAsync(cancellation);
        standing.Desk.Confirm();
        standing.Ran = true;
        foreach (string warning in standing.Desk.Warnings.Select(warning => warning.Sentence).Where(standing.Warned.Add))
        {
            output.WriteLine($"Warning: {warning}");
        }

        if (first)
        {
            standing.Supervisor.Ready();
            Say(standing, app, output);
        }

        try
        {
            await app.WaitForShutdownAsync(cancellation);
        }
        catch (RigFaultException late)
        {
            // What counts is whether all is off once the rig has let go.
            output.WriteLine(late.Message);
        }
    }

    /// <summary>How a holding's record is opened.</summary>
    public static RecordOptions RecordOf(PileSettings settings, DataFolder folder) => new()
    {
        DataDirectory = folder.Path,
        Origin = DataFolder.Origin(settings),
        KeepTicks = RecordSettings.Ticks(settings.Record.KeepDays, settings.Control.TickSeconds),
        KeepMinuteTicks = RecordSettings.Ticks(settings.Record.KeepMinutesDays, settings.Control.TickSeconds),
    };

    private static async Task<ServeParts> SimulatedAsync(
        Standing standing, PileSettings settings, LiteRecord record, TextWriter output, CancellationToken cancellation)
    {
        FaultBoard faults = new(settings.Rig.Faults);
        Holding holding = await SimulatedSite.OpenAsync(settings, standing.Folder, record, faults, output, cancellation);
        long now = holding.Plant.UtcMilliseconds;
        SpedClock clock = new(TimeProvider.System, DateTimeOffset.FromUnixTimeMilliseconds(now), standing.Options.Speed);

        // A simulated holding lives in its weather's time, which knows no summer time.
        int standard = HoldingBuild.StandardOffsetMinutes(settings);
        return new ServeParts(
            settings, new KeptRig(holding, settings, standing.Folder), record, holding.Memory, now, clock, standing.Options.Speed,
            _ => standard, new FaultSwitches(faults), standing.Folder);
    }

    private static async Task<ServeParts> RealAsync(
        Standing standing, PileSettings settings, GpioRig hardware, LiteRecord record, CancellationToken cancellation)
    {
        Memory start = (await record.LastMemoryAsync(cancellation))?.AfterRestart() ?? Memory.Fresh;
        IRig rig = settings.Rig.Faults.Count > 0 ? new FaultyRig(hardware, new FaultBoard(settings.Rig.Faults)) : hardware;
        return new ServeParts(
            settings, rig, record, start, 0, TimeProvider.System, 1, settings.Site.OffsetMinutesAt, null, standing.Folder,
            hardware.Lamp);
    }

    private static void Say(Standing standing, WebApplication app, TextWriter output)
    {
        (ServeOptions options, SettingsDesk desk, RunAccess access) = (standing.Options, standing.Desk, standing.Access);
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

    /// <summary>What outlives the hosts that changes of settings build one after another.</summary>
    private sealed record Standing(
        ServeOptions Options, SettingsDesk Desk, RunAccess Access, DataFolder Folder, Supervisor Supervisor, StartBook Starts)
    {
        /// <summary>Whether a host has run.</summary>
        public bool Ran { get; set; }

        /// <summary>What the last host's rig could not switch off, a sentence each.</summary>
        public IReadOnlyList<string> LeftOn { get; set; } = [];

        /// <summary>The warnings that were said: each once.</summary>
        public HashSet<string> Warned { get; } = [];
    }
}
