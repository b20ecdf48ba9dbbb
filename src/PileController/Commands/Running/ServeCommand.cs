using System.CommandLine;
using PileController.Commands.Shell;
using PileController.Panel.Guard;
using PileController.Records;
using PileController.Rigs.Hardware;
using PileController.Serving;
using PileController.Simulation;

namespace PileController.Commands.Running;

/// <summary>serve: runs the controller and its page.</summary>
internal static class ServeCommand
{
    private static readonly Option<string?> SettingsPath = new("--settings") { Description = "The settings file; the demo's when left out." };
    private static readonly Option<string?> Data = new("--data") { Description = "Folder of the record; a passing one when left out (simulated rig only)." };
    private static readonly Option<string?> Urls = new("--urls") { Description = "Address of the page: http://127.0.0.1:8080; others than this machine's own loopback need panel.lan and a passphrase." };
    private static readonly Option<double> Speed = Ask.Number("--speed", "Times faster than life, simulated rig only; 60 when left out,", 1, 3600, "times").Unless(0);

    public static Command Create()
    {
        PileCommand command = new(
            "serve", "Runs the controller and its page; the simulated demo when no settings are given.",
            "PileController serve --speed 60 --urls http://127.0.0.1:8080")
        {
            SettingsPath, Data, Urls, Speed,
        };
        command.SetAction(RunAsync);
        return command;
    }

    private static async Task<int> RunAsync(ParseResult parse, CancellationToken cancellation)
    {
        TextWriter error = parse.InvocationConfiguration.Error;
        if (SettingsSource.Sound(parse, SettingsPath) is not { } settings)
        {
            return ExitCodes.WrongUse;
        }

        string urls = parse.GetValue(Urls) ?? settings.Panel.Address;
        string? data = parse.GetValue(Data);
        if (!RunAccess.TryFind(settings, data, out bool passphraseSet, out string? spoilt)
            || (spoilt = PanelAddress.Check(urls, settings.Panel, passphraseSet)) is not null)
        {
            error.WriteLine(spoilt);
            return ExitCodes.WrongUse;
        }

        if (!RenewedCertificate.TryLoad(settings.Panel, out RenewedCertificate? certificate, out string? unfit))
        {
            error.WriteLine(unfit);
            return ExitCodes.WrongUse;
        }

        double speed = parse.GetValue(Speed);
        if (!settings.Rig.Simulated && (speed > 1 || data is null))
        {
            error.WriteLine(speed > 1
                ? $"--speed is {speed:R}; allowed: 1 on a real rig, which lives in its own time"
                : "--data is missing; allowed: the folder of the record, which a real rig needs");
            return ExitCodes.WrongUse;
        }

        string text = parse.GetValue(SettingsPath) is { } path
            ? await File.ReadAllTextAsync(path, cancellation)
            : Demo.SettingsText();
        try
        {
            await ServeRun.RunAsync(
                new ServeOptions(settings, text, data, urls, speed > 0 ? speed : settings.Panel.DemoSpeed, certificate),
                parse.InvocationConfiguration.Output, cancellation);
            return ExitCodes.Done;
        }
        catch (OperationCanceledException) when (cancellation.IsCancellationRequested)
        {
            // Stopped while the demo's first days were still being made; nothing was running yet.
            return ExitCodes.Done;
        }
        catch (RecordInUseException used)
        {
            error.WriteLine($"--data is \"{data}\": {used.Message}");
            return ExitCodes.WrongUse;
        }
        catch (RigFaultException silent)
        {
            error.WriteLine(silent.Message);
            return ExitCodes.No;
        }
        catch (IOException failed)
        {
            error.WriteLine($"Cannot serve at {urls}: {failed.Message}");
            return ExitCodes.WrongUse;
        }
    }
}
