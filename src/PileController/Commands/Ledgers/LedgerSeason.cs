using System.CommandLine;
using PileController.Commands.Shell;
using PileController.Ledgers;
using PileController.Ledgers.Editing;
using PileController.Plans.Money;

namespace PileController.Commands.Ledgers;

/// <summary>ledger open, amend, close.</summary>
internal static class LedgerSeason
{
    public static Command Open()
    {
        EditOptions edit = EditOptions.Create();
        Option<string> name = LedgerAsk.Text("--name", "What the season is called.", LedgerLimits.LongestName).Needed();
        Terms terms = Terms.Create();
        PileCommand command = new(
            "open", "Begins a season when its heap is built.", "PileController ledger open --data DIR --name \"Winter 2026\" --heap-built 2026-11-02 --who Jo")
        {
            name,
        };
        terms.AddTo(command);
        edit.AddTo(command);
        command.SetAction((parse, cancellation) => LedgerAsk.EditAsync(
            parse, edit, begin: true,
            (view, _, by, today) => SeasonEdits.Open(
                view.Book, parse.GetRequiredValue(name), parse.GetValue(terms.HeapBuilt) ?? today, today,
                terms.Changed(parse, LedgerFuel.Of(view.Settings.Plan.Prices, by), view, by)),
            view => $"The season \"{view.Book.Seasons[^1].Name}\" is open; its heap was built on {view.Book.Seasons[^1].HeapBuiltOn:yyyy-MM-dd}.",
            cancellation));
        return command;
    }

    public static Command Amend()
    {
        EditOptions edit = EditOptions.Create();
        Option<string> name = LedgerAsk.Text("--name", "What the season is called from now on.", LedgerLimits.LongestName);
        Terms terms = Terms.Create();
        PileCommand command = new(
            "amend", "Puts right what was said when the open season was opened.", "PileController ledger amend --data DIR --fuel propane --price 3.10 --who Jo")
        {
            name,
        };
        terms.AddTo(command);
        edit.AddTo(command);
        command.SetAction((parse, cancellation) => LedgerAsk.EditAsync(
            parse, edit, begin: false,
            (view, _, by, today) => SeasonEdits.Change(
                view.Book, parse.GetValue(name), parse.GetValue(terms.HeapBuilt), today, fuel => terms.Changed(parse, fuel, view, by)),
            view => $"The season \"{view.Book.Seasons[^1].Name}\" is put right.",
            cancellation));
        return command;
    }

    public static Command Close()
    {
        EditOptions edit = EditOptions.Create();
        Option<DateOnly?> on = LedgerAsk.Date("--on", "Last date of the season, as 2027-04-12; today when left out.");
        PileCommand command = new(
            "close", "Ends the open season and keeps what was learned of heap and house.", "PileController ledger close --data DIR --who Jo")
        {
            on,
        };
        edit.AddTo(command);
        command.SetAction((parse, cancellation) => LedgerAsk.EditAsync(
            parse, edit, begin: false,
            (view, memory, by, today) => SeasonEdits.Close(
                view.Book, parse.GetValue(on) ?? today, today, by, season => LedgerLessons.Of(view, memory, season)),
            view => $"The season \"{view.Book.Seasons[^1].Name}\" is closed on {view.Book.Seasons[^1].Closed!.On:yyyy-MM-dd}.",
            cancellation));
        return command;
    }

    /// <summary>What a season is opened with and may be amended in.</summary>
    private sealed record Terms(Option<DateOnly?> HeapBuilt, Option<string> Fuel, Option<double> Price, Option<double> Electricity, Option<string> Money)
    {
        public static Terms Create() => new(
            LedgerAsk.Date("--heap-built", "When the heap was built, as 2026-11-02: the first date of the season."),
            Ask.Word("--fuel", "What the heat would have come from otherwise; that of the settings' prices when left out:", [.. Fuels.All.Select(f => (f.Name, f.Name))]),
            Ask.Number("--price", "Price of that fuel, by the unit it is sold by,", 0, LedgerLimits.MostPrice, "in your money").Unless(double.NaN),
            Ask.Number("--electricity", "Price of a kWh for pump and blower; 0 where the sun gives it,", 0, LedgerLimits.MostPrice, "in your money").Unless(double.NaN),
            LedgerAsk.Text("--money", "Name or sign of the money.", 10));

        public void AddTo(Command command)
        {
            command.Options.Add(HeapBuilt);
            command.Options.Add(Fuel);
            command.Options.Add(Price);
            command.Options.Add(Electricity);
            command.Options.Add(Money);
        }

        public FuelEntry Changed(ParseResult parse, FuelEntry fuel, LedgerView view, Hand by) => LedgerFuel.Changed(
            fuel, parse.GetValue(Fuel), view.Settings.Plan.Prices, parse.GetValue(Price), parse.GetValue(Electricity), parse.GetValue(Money), by);
    }
}
