using System.CommandLine;
using PileController.Commands.Running;
using PileController.Commands.Shell;
using PileController.Ledgers;
using PileController.Ledgers.Pages;
using PileController.Units;

namespace PileController.Commands.Ledgers;

/// <summary>ledger compare: the seasons beside each other.</summary>
internal static class LedgerCompare
{
    private static readonly Option<string> Data = RecordAsk.Data();
    private static readonly Option<string?> Settings = LedgerAsk.Settings();
    private static readonly Option<bool> Json = Ask.Json();

    public static Command Create()
    {
        PileCommand command = new("compare", "Shows the seasons beside each other.", "PileController ledger compare --data DIR")
        {
            Data, Settings, Json,
        };
        command.SetAction((parse, _) => LedgerAsk.LookAsync(parse, Data, Settings, view => Tell(parse, view)));
        return command;
    }

    private static int Tell(ParseResult parse, LedgerView view)
    {
        IReadOnlyList<SeasonBeside> seasons = SeasonBeside.All(view);
        TextWriter output = parse.InvocationConfiguration.Output;
        UnitSystem u = view.Settings.Units;
        if (parse.GetValue(Json))
        {
            LedgerAsk.WriteJson(parse, seasons);
        }
        else if (seasons.Count == 0)
        {
            output.WriteLine("The book holds no season yet.");
        }
        else
        {
            WriteTable(output, seasons,
            [
                ("", s => s.Name),
                ("Heap built", s => $"{s.HeapBuiltOn:yyyy-MM-dd}"),
                ("Closed", s => s.ClosedOn is { } closed ? $"{closed:yyyy-MM-dd}" : "open"),
                ("Days counted", s => $"{s.Total.Days}"),
                ("Heat by water", s => LedgerWords.Water(s.Total, u)),
                ("Heat by air", s => LedgerWords.Heat(s.Total.AirKWh, u)),
                ("Electricity", s => LedgerWords.Electricity(s.Total.ElectricityKWh)),
                ("Saved, estimated", s => LedgerWords.Money(s.Money.Saved, s.Money.Money)),
                ("Below its floor", s => LedgerWords.Hours(s.Total.BelowFloorHours)),
                ("Frost guard", s => LedgerWords.Hours(s.Total.FrostGuardHours)),
                ("Pump starts", s => $"{s.Total.PumpStarts}"),
                ("Trips", s => $"{s.Total.Trips}"),
                ("Nights kept", s => $"{s.Total.NightsKept} of {s.Total.Nights}"),
                ("Mass in, wet", s => s.MassInKg is { } kg ? Show.Mass(kg, u) : "not entered"),
                ("Mass out", s => s.MassOutKg is { } kg ? Show.Mass(kg, u) : "not entered"),
                ("Past its best", s => s.Fading.FadedOn is { } faded ? $"{faded:yyyy-MM-dd}" : "not seen"),
            ]);
        }

        return ExitCodes.Done;
    }

    private static void WriteTable(
        TextWriter output, IReadOnlyList<SeasonBeside> seasons, IReadOnlyList<(string Name, Func<SeasonBeside, string> Of)> rows)
    {
        int first = rows.Max(r => r.Name.Length);
        int[] widths = [.. seasons.Select(s => rows.Max(r => r.Of(s).Length))];
        foreach ((string name, Func<SeasonBeside, string> of) in rows)
        {
            output.WriteLine($"{name.PadRight(first)}  {string.Join("  ", seasons.Select((s, i) => of(s).PadRight(widths[i])))}".TrimEnd());
        }
    }
}
