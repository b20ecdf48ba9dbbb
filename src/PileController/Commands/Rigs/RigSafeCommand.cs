using System.CommandLine;
using System.Device.Gpio;
using PileController.Commands.Shell;
using PileController.Rigs.Hardware;
using PileController.Serving;
using PileController.Settings;
using PileController.Watch;

namespace PileController.Commands.Rigs;

/// <summary>rig safe: puts every output at its safe value, for when the service that held them is gone.</summary>
internal static class RigSafeCommand
{
    private static readonly Option<string?> SettingsPath = new("--settings") { Description = "The settings file of the rig." };

    private static readonly Option<string> Data = new Option<string>("--data") { Description = $"Folder of the data; the settings the service ran with last are taken from it: first of all when it did not end in order, and when the file's cannot be used; {DataFolder.Usual} when left out." }.Unless(DataFolder.Usual);

    // For a start of the program on a slow board.
    private const double Spare = 15;

    public static Command Create()
    {
        PileCommand command = new(
            "safe", "Switches every output off and ends. Run by the service manager after the service has ended, however it ended.",
            "PileController rig safe --settings /etc/pile-controller/pile.json")
        {
            SettingsPath, Data,
        };
        command.SetAction(RunAsync);
        return command;
    }

    // A file that was spoilt while the service ran must not keep on what the service has switched on.
    private static PileSettings? LastSound(ParseResult parse)
    {
        string folder = parse.GetValue(Data)!;
        PileSettings? settings = new DataFolder(folder).FindLastSettings();
        parse.InvocationConfiguration.Error.WriteLine(settings is null
            ? $"--data is \"{folder}\": no settings that can be used are kept there either; allowed: the folder that serve is given with --data. Cut the supply of the outputs by hand."
            : $"What is switched off is told by the settings the service ran with last, as kept in \"{folder}\".");
        return settings;
    }

    // What ended in order has switched off what it ran with; whatever is wired since is the file's affair.
    private static PileSettings? LeftRunning(ParseResult parse)
    {
        DataFolder folder = new(parse.GetValue(Data)!);

        // Most often the file is what it was, and seconds count here: nothing is parsed for that.
        bool isSame = parse.GetValue(SettingsPath) is { } file && folder.LastIs(file);
        return !isSame && StartBook.Of(folder.Path).LeftRunning() ? folder.FindLastSettings() : null;
    }

    private static async Task<int> RunAsync(ParseResult parse, CancellationToken cancellation)
    {
        TextWriter output = parse.InvocationConfiguration.Output;
        TextWriter error = parse.InvocationConfiguration.Error;
        if ((SettingsSource.Sound(parse, SettingsPath) ?? LastSound(parse)) is not { } settings)
        {
            return ExitCodes.WrongUse;
        }

        (IReadOnlyList<SafeTurn> turns, string? news) = SafeTurns.Of(settings, LeftRunning(parse));
        if (turns.Count == 0)
        {
            output.WriteLine("The rig is simulated: there is nothing to switch off.");
            return ExitCodes.Done;
        }

        if (news is not null)
        {
            error.WriteLine(news);
        }

        if (turns.Sum(turn => SafeLines.LongestSeconds(turn.Hardware, turn.Motion)) is > 0 and double seconds)
        {
            Supervisor.Find().TakesLonger(TimeSpan.FromSeconds(seconds + Spare));
        }

        List<string> faults = [];
        foreach (SafeTurn turn in turns)
        {
            SafeLinesResult safe = await SetAsync(turn, cancellation);
            faults.AddRange(safe.Faults);
            foreach (string sentence in safe.News.Concat(safe.Faults).Distinct())
            {
                error.WriteLine(sentence);
            }
        }

        output.WriteLine(faults.Count == 0 ? "All outputs are off." : "Not all outputs could be switched off: cut their supply by hand.");
        return faults.Count == 0 ? ExitCodes.Done : ExitCodes.No;
    }

    private static async Task<SafeLinesResult> SetAsync(SafeTurn turn, CancellationToken cancellation)
    {
        // Asked for by the first line: what hangs on other chips is made safe even when this one is not there.
        Lazy<GpioController> lines = new(() => GpioChips.Open(turn.Hardware.GpioChipLabel));
        SafeLinesResult safe = await SafeLines.SetAsync(() => lines.Value, turn.Hardware, turn.Motion, TimeProvider.System, cancellation);
        if (lines.IsValueCreated)
        {
            lines.Value.Dispose();
        }

        return safe;
    }
}
