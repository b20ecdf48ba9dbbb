using System.CommandLine;
using PileController.Commands.Shell;
using PileController.Ledgers;
using PileController.Ledgers.Editing;
using PileController.Units;

namespace PileController.Commands.Ledgers;

/// <summary>ledger note, mass, part.</summary>
internal static class LedgerEntries
{
    public static Command Note()
    {
        EditOptions edit = EditOptions.Create();
        Argument<string> text = LedgerAsk.Text("TEXT", "What to write.", LedgerLimits.LongestNote, "TEXT");
        Option<string?> season = LedgerAsk.Season();
        PileCommand command = new("note", "Writes a note into a season.", "PileController ledger note --data DIR --who Jo \"Turned the edge, added water\"")
        {
            text, season,
        };
        edit.AddTo(command);
        command.SetAction((parse, cancellation) => LedgerAsk.EditAsync(
            parse, edit, begin: false,
            (view, _, by, _) => EntryEdits.Note(view.Book, parse.GetValue(season), new NoteEntry(parse.GetRequiredValue(text).Trim(), by)),
            view => $"Written into \"{EntryEdits.Find(view.Book, parse.GetValue(season)).Name}\".",
            cancellation));
        return command;
    }

    public static Command Mass()
    {
        EditOptions edit = EditOptions.Create();
        Option<MassWay> way = Ask.Word("--way", "Which way, wet into the heap or out of it when it is taken down:", [("in", MassWay.In), ("out", MassWay.Out)]).Needed();
        Option<double> mass = Ask.Quantity("--mass", "How much.", "kg", Dimension.Mass, LedgerLimits.LeastKilograms, LedgerLimits.MostKilograms).Needed();
        Option<Known> known = Ask.Word("--known", "How it is known:", [("measured", Known.Measured), ("guessed", Known.Guessed)]).Needed();
        Option<string> how = LedgerAsk.Text("--how", "What was measured or guessed.", LedgerLimits.LongestHow);
        Option<string?> season = LedgerAsk.Season();
        PileCommand command = new(
            "mass", "Enters the mass that went into the heap or came out of it; the last of each way counts.",
            "PileController ledger mass --data DIR --way in --mass \"9000 kg\" --known guessed --how \"12 trailers\" --who Jo")
        {
            way, mass, known, how, season,
        };
        edit.AddTo(command);
        command.SetAction((parse, cancellation) => LedgerAsk.EditAsync(
            parse, edit, begin: false,
            (view, _, by, _) => EntryEdits.Mass(
                view.Book, parse.GetValue(season),
                new MassEntry(parse.GetValue(way), parse.GetValue(mass), parse.GetValue(known), parse.GetValue(how), by)),
            view => $"Entered into \"{EntryEdits.Find(view.Book, parse.GetValue(season)).Name}\".",
            cancellation));
        return command;
    }

    public static Command Part()
    {
        EditOptions edit = EditOptions.Create();
        Argument<string> name = LedgerAsk.Text("NAME", "What it is.", LedgerLimits.LongestName, "NAME");
        Option<double> count = Ask.Number("--count", "How many; 1 when left out, 0 takes it out of the book,", 0, LedgerLimits.MostCount, "pieces").Unless(1);
        Option<double> price = Ask.Number("--price", "What one cost; of a reused one what a new one would have cost,", 0, LedgerLimits.MostPrice, "in your money").Needed();
        Option<bool> reused = new("--reused") { Description = "It was at hand already and nothing was paid." };
        Option<string?> season = LedgerAsk.Season();
        PileCommand command = new("part", "Enters a part, or puts right the one of that name.", "PileController ledger part --data DIR --who Jo --price 110 \"circulating pump\"")
        {
            name, count, price, reused, season,
        };
        edit.AddTo(command);
        command.SetAction((parse, cancellation) => LedgerAsk.EditAsync(
            parse, edit, begin: false,
            (view, _, by, _) => EntryEdits.Part(
                view.Book, parse.GetValue(season),
                new PartEntry(parse.GetRequiredValue(name).Trim(), parse.GetValue(count), parse.GetValue(price), parse.GetValue(reused), by)),
            view => $"Entered into \"{EntryEdits.Find(view.Book, parse.GetValue(season)).Name}\".",
            cancellation));
        return command;
    }
}
