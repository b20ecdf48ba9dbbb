using System.CommandLine;
using System.Runtime.InteropServices;
using PileController.Commands.Shell;
using PileController.Commissioning;
using PileController.Commissioning.Running;
using PileController.Commissioning.Sheets;
using PileController.Control.Readings;
using PileController.Ledgers;
using PileController.Records;
using PileController.Rigs.Hardware;
using PileController.Serving;
using PileController.Settings;

namespace PileController.Commands.Rigs.Tests;

/// <summary>Makes one test from the command line.</summary>
internal static class RigTestRun
{
    private const string Nobody = "command line";

    public static async Task<int> RunAsync(ParseResult parse, string id, TestOptions options, CancellationToken cancellation)
    {
        TextWriter error = parse.InvocationConfiguration.Error;
        TestAsk ask = options.Told(parse);
        if (SettingsSource.Sound(parse, options.Settings) is not { } settings)
        {
            return ExitCodes.WrongUse;
        }

        // The hand on the simulated rig holds a probe; the test itself knows of none.
        TestAsk told = id == "find" ? ask with { Channels = [] } : ask;
        if (Catalogue.WhyNot(id, settings, told) is { } why)
        {
            error.WriteLine(why);
            return ExitCodes.WrongUse;
        }

        string? folder = parse.GetValue(options.Data);
        if (!settings.Rig.Simulated && folder is null)
        {
            error.WriteLine("--data is missing; allowed: the folder of the record, which a real rig needs");
            return ExitCodes.WrongUse;
        }

        Procedure procedure = Catalogue.Of(id, settings, told);
        if (!Agreed(parse, options, procedure))
        {
            return ExitCodes.No;
        }

        // A terminal that goes away ends the test as Ctrl+C does: the outputs go off first.
        using CancellationTokenSource ending = CancellationTokenSource.CreateLinkedTokenSource(cancellation);
        using PosixSignalRegistration hangup = PosixSignalRegistration.Create(PosixSignal.SIGHUP, signal =>
        {
            signal.Cancel = true;
            ending.Cancel();
        });
        try
        {
            // While it is open here no service can drive the same rig.
            await using LiteRecord? record = folder is null ? null : LiteRecord.Open(ServeRun.RecordOf(settings, new DataFolder(folder)));
            return await RunAsync(parse, options, settings, procedure, ask, record, ending.Token);
        }
        catch (RecordInUseException used)
        {
            error.WriteLine($"--data is \"{folder}\": {used.Message} While the service runs, tests are made at its page: Rig, then Commission.");
            return ExitCodes.WrongUse;
        }
        catch (RigFaultException silent)
        {
            error.WriteLine(silent.Message);
            return ExitCodes.No;
        }
        catch (Exception failed) when (failed is IOException or UnauthorizedAccessException)
        {
            error.WriteLine(failed.Message);
            return ExitCodes.No;
        }
    }

    private static async Task<int> RunAsync(
        ParseResult parse, TestOptions options, PileSettings settings, Procedure procedure, TestAsk ask, LiteRecord? record, CancellationToken cancellation)
    {
        string who = parse.GetValue(options.Who) ?? Nobody;
        (ITestRig rig, IGrower grower) = await OpenAsync(parse, options, settings, ask, record, cancellation);
        Walk walk;
        await using (rig)
        {
            walk = await Leading.RunAsync(procedure, rig, grower, who, cancellation);
        }

        SheetEntry entry = new(procedure.Id, procedure.Title, new Hand(who, Nobody, rig.UtcMilliseconds), rig.Simulated, walk.Found());
        if (parse.GetValue(options.Data) is { } folder)
        {
            new SheetFile(folder).Add(entry);
            if (procedure.Id == "wind-down")
            {
                using LedgerDesk desk = new(folder, record!, new DataFolder(folder).FindSettings, settings);
                await desk.EditAsync((view, _) => SeasonEnd.Enter(view.Book, walk, entry.By), CancellationToken.None);
            }
        }

        if (options.Out is not null && parse.GetValue(options.Out) is { } path && entry.Outcomes.FirstOrDefault(one => one.File is not null) is { } measured)
        {
            await File.WriteAllTextAsync(path, measured.File, CancellationToken.None);
        }

        RigTestText.Tell(parse, parse.GetValue(options.Json), entry, parse.GetValue(options.Data));
        return entry.Outcomes.Any(one => one.Verdict == Soundness.Failed) ? ExitCodes.No : ExitCodes.Done;
    }

    private static async Task<(ITestRig Rig, IGrower Grower)> OpenAsync(
        ParseResult parse, TestOptions options, PileSettings settings, TestAsk ask, LiteRecord? record, CancellationToken cancellation)
    {
        TextWriter dialogue = Dialogue(parse, options);
        if (settings.Rig.Simulated)
        {
            SimulatedTestRig simulated = new(settings);
            Channel[] usual = parse.CommandResult.Command.Name == "find" ? [Channel.Supply] : [Channel.Supply, Channel.Return];
            return (simulated, new SimulatedGrower(simulated, settings, ask.Channels.Count > 0 ? ask.Channels : usual, dialogue.WriteLine));
        }

        GpioRig gpio = ServeHost.OpenHardware(settings, dialogue.WriteLine);
        try
        {
            HardwareTestRig real = await HardwareTestRig.OpenAsync(gpio, gpio.Pulse, record!, settings, TimeProvider.System, cancellation);
            return (real, new TypingGrower(Console.In, dialogue, () => real.Seconds));
        }
        catch (Exception)
        {
            // Its lines would stay taken, and its timer would go on.
            await gpio.DisposeAsync();
            throw;
        }
    }

    // Says what will move before anything does, and asks.
    private static bool Agreed(ParseResult parse, TestOptions options, Procedure procedure)
    {
        TextWriter dialogue = Dialogue(parse, options);
        dialogue.WriteLine(procedure.Title);
        foreach (string caution in procedure.Cautions)
        {
            dialogue.WriteLine($"  ! {caution}");
        }

        if (procedure.Moving.Count == 0)
        {
            return true;
        }

        dialogue.WriteLine($"What is held by hand meanwhile: {string.Join("; ", procedure.Moving)}. Interlocks still outrank it.");
        if (parse.GetValue(options.Yes))
        {
            return true;
        }

        dialogue.Write("Go on? (yes or no) ");
        if (Console.In.ReadLine()?.Trim().ToLowerInvariant() is "y" or "yes")
        {
            return true;
        }

        dialogue.WriteLine("Nothing was moved.");
        return false;
    }

    // With an answer for machines the dialogue goes beside it.
    private static TextWriter Dialogue(ParseResult parse, TestOptions options) =>
        parse.GetValue(options.Json) ? parse.InvocationConfiguration.Error : parse.InvocationConfiguration.Output;
}
