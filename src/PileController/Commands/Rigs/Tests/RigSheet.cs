using System.CommandLine;
using PileController.Commands.Ledgers;
using PileController.Commands.Running;
using PileController.Commands.Shell;
using PileController.Commissioning;
using PileController.Commissioning.Sheets;
using PileController.Settings;

namespace PileController.Commands.Rigs.Tests;

/// <summary>rig sheet: what was proven of the rig, to read or to print.</summary>
internal static class RigSheet
{
    private static readonly Argument<string?> Path = new("FILE") { Description = "Where to write the page, HTML; listed here when left out.", Arity = ArgumentArity.ZeroOrOne };
    private static readonly Option<string> Data = RecordAsk.Data();
    private static readonly Option<string?> SettingsPath = new("--settings") { Description = "The settings file, for name and time zone; the demo's when left out." };
    private static readonly Option<bool> Json = Ask.Json();

    public static Command Create()
    {
        PileCommand command = new("sheet", "Lists the commissioning sheet, or writes it as one page to print.", "PileController rig sheet --data DIR sheet.html")
        {
            Path, Data, SettingsPath, Json,
        };
        command.SetAction(Run);
        return command;
    }

    private static int Run(ParseResult parse)
    {
        if (SettingsSource.Sound(parse, SettingsPath) is not { } settings)
        {
            return ExitCodes.WrongUse;
        }

        string folder = parse.GetRequiredValue(Data);
        if (!Directory.Exists(folder))
        {
            return RecordAsk.Refuse(parse, folder, "there is no such folder; allowed: the folder of a record");
        }

        try
        {
            Tell(parse, new SheetFile(folder).Read(), settings);
            return ExitCodes.Done;
        }
        catch (SheetFileException unreadable)
        {
            parse.InvocationConfiguration.Error.WriteLine(unreadable.Message);
            return ExitCodes.No;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException)
        {
            parse.InvocationConfiguration.Error.WriteLine($"FILE is \"{parse.GetValue(Path)}\": {e.Message.TrimEnd('.')}; allowed: the path of a file that can be written");
            return ExitCodes.WrongUse;
        }
    }

    private static void Tell(ParseResult parse, Sheet sheet, PileSettings settings)
    {
        if (parse.GetValue(Path) is { } path)
        {
            File.WriteAllText(path, SheetPage.Html(sheet, settings, embedStyle: true));
        }

        if (parse.GetValue(Json))
        {
            LedgerAsk.WriteJson(parse, sheet);
            return;
        }

        TextWriter output = parse.InvocationConfiguration.Output;
        foreach (SheetEntry entry in sheet.Entries)
        {
            DateTimeOffset at = DateTimeOffset.FromUnixTimeMilliseconds(entry.By.AtUtcMilliseconds)
                .ToOffset(TimeSpan.FromMinutes(settings.Site.OffsetMinutesAt(entry.By.AtUtcMilliseconds)));
            output.WriteLine($"{at:yyyy-MM-dd HH:mm}  {entry.Title}, by {entry.By.Who}{(entry.Simulated ? " (simulated rig)" : "")}");
            foreach (Outcome outcome in entry.Outcomes)
            {
                output.WriteLine($"  {RigTestText.Mark(outcome.Verdict)} {outcome.Subject}: {outcome.Sentence}");
            }
        }

        output.WriteLine(sheet.Entries.Count == 0 ? "Nothing has been kept on the sheet yet." : $"{sheet.Entries.Count} kept{(parse.GetValue(Path) is { } written ? $"; the page is in {written}" : "")}.");
    }
}
