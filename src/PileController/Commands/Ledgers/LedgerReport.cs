using System.CommandLine;
using PileController.Commands.Running;
using PileController.Commands.Shell;
using PileController.Ledgers;
using PileController.Ledgers.Editing;
using PileController.Ledgers.Pages;

namespace PileController.Commands.Ledgers;

/// <summary>ledger report: one printable page of a season.</summary>
internal static class LedgerReport
{
    private static readonly Argument<string> Path = new("FILE") { Description = "Where to write the page, HTML." };
    private static readonly Option<string> Data = RecordAsk.Data();
    private static readonly Option<string?> Season = LedgerAsk.Season();
    private static readonly Option<string?> Settings = LedgerAsk.Settings();
    private static readonly Option<bool> Json = Ask.Json();

    public static Command Create()
    {
        PileCommand command = new("report", "Writes one printable page of a season.", "PileController ledger report --data DIR season.html")
        {
            Path, Data, Season, Settings, Json,
        };
        command.SetAction((parse, _) => LedgerAsk.LookAsync(parse, Data, Settings, view => Write(parse, view)));
        return command;
    }

    private static int Write(ParseResult parse, LedgerView view)
    {
        string path = parse.GetRequiredValue(Path);
        SeasonEntry season = EntryEdits.Find(view.Book, parse.GetValue(Season));
        try
        {
            File.WriteAllText(path, SeasonReport.Html(view, season, view.Settings.Units, embedStyle: true));
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException)
        {
            parse.InvocationConfiguration.Error.WriteLine($"FILE is \"{path}\": {e.Message.TrimEnd('.')}; allowed: the path of a file that can be written");
            return ExitCodes.WrongUse;
        }

        if (parse.GetValue(Json))
        {
            LedgerAsk.WriteJson(parse, new { Season = season.Name, File = path });
        }
        else
        {
            parse.InvocationConfiguration.Output.WriteLine($"The page of \"{season.Name}\" is in {path}.");
        }

        return ExitCodes.Done;
    }
}
