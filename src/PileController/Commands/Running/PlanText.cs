using System.CommandLine;
using PileController.Commands.Shell;
using PileController.Ledgers.Pages;
using PileController.Plans.Ahead;
using PileController.Plans.Money;
using PileController.Plans.Sketch;
using PileController.Units;

namespace PileController.Commands.Running;

/// <summary>What the season ahead may bring, for people.</summary>
internal static class PlanText
{
    public static void Write(ParseResult parse, PlanAnswer answer, UnitSystem units)
    {
        AheadResult a = answer.Ahead;
        TextWriter output = parse.InvocationConfiguration.Output;
        WriteShort(output, answer, units);
        output.WriteLine("What can be said by sums, of the heap as the settings tell it");
        Answer.WriteRows(parse, SketchText.Rows(answer.Sketch, units));
        WriteWords(output, "What to change", [.. answer.Sketch.Advice.Where(w => w.Worth)], units);
        WriteWords(output, "Not worth it here", [.. answer.Sketch.Advice.Where(w => !w.Worth)], units);
        WriteWords(output, "What is wished for", answer.Sketch.Claims, units);
        output.WriteLine();
        output.WriteLine("The season ahead, with the controller");
        string Energy(Percentiles kWh) => Three(kWh, v => PlanShow.Heat(v, units));
        string Power(Percentiles watts) => Three(watts, v => Show.Power(v, units));
        Answer.WriteRows(
            parse,
            ("Seasons", $"{answer.Seasons} of {answer.Days} days, seed {answer.Seed}, on {Winters(answer)}"),
            ("Figures", "P10 / P50 / P90: a tenth, half, nine tenths of the seasons lie below"),
            ("Heat drawn", $"{Energy(a.DrawnKWh)}; as a mean {Power(a.DrawnWatts)}"),
            ("Useful to the house", $"{Energy(a.UsefulKWh)} at the set point"),
            ("Heat made", $"{Energy(a.GeneratedKWh)}; as a mean {Power(a.GeneratedWatts)}"),
            ("Most its mass could give", Energy(a.MostHeatKWh)),
            ("Coldest in the house", Three(a.ColdestC, v => Show.Temperature(v, units))),
            ("Below its minimum", Three(a.HoursBelowMinimum, v => $"{v:F0} h")),
            ("Chance of holding it", $"{a.ChanceOfHoldingMinimum:P0}"),
            ("Heap lights", $"{Three(a.LitOnDay, v => $"day {v:F0}")}; chance {a.ChanceOfLighting:P0}"),
            ("Heap past its best", $"{Three(a.FadedOnDay, v => $"day {v:F0}")}; chance {a.ChanceOfFading:P0}"),
            ("", "That is the first day after lighting on which a week's heat is below half that of its best week, or it stalls. Less heat follows, for weeks or months."),
            ("Water it loses", $"{Three(a.WaterLostKg, v => Show.Volume(v, units))}: to be given back by rain or hose"),
            ("Dry mass it loses", Three(a.DryMassLostKg, v => Show.Mass(v, units))),
            ("Electricity", $"pump {Three(a.PumpKWh, v => $"{v:F1} kWh")}, blower {Three(a.BlowerKWh, v => $"{v:F1} kWh")}"));
        if (answer.Wish is { } wish)
        {
            output.WriteLine();
            output.WriteLine($"Wish: {(units == UnitSystem.Metric ? wish.Metric : wish.Us)}");
        }

        output.WriteLine();
        output.WriteLine("Money");
        WriteMoney(parse, answer.Money);
        if (answer.Lessons is { } lessons)
        {
            output.WriteLine();
            output.WriteLine("What the last season taught, not applied above: where it is far from 1 the settings may be wrong, or the next heap another");
            Answer.WriteRows(parse, LedgerWords.Rows(lessons, units));
        }

        WriteWords(output, "Cautions: local codes and licensed trades decide", answer.Sketch.Cautions, units);
    }

    // What a grower asks first; all of it stands below at length.
    private static void WriteShort(TextWriter output, PlanAnswer answer, UnitSystem u)
    {
        (SketchHeap heap, SketchCoil coil, SketchLoop loop, SketchHouse house) = (answer.Sketch.Heap, answer.Sketch.Coil, answer.Sketch.Loop, answer.Sketch.House);
        AheadResult a = answer.Ahead;
        output.WriteLine("In short");
        output.WriteLine($"- Chips: {PlanShow.Bulk(heap.VolumeM3, u)}, {Show.Mass(heap.WetMassKg, u)} wet. Pipe: {Show.Length(coil.LengthM, u)} at {Show.Length(coil.RadiusM, u)} from the axis. "
            + $"Pump: {Show.WaterFlow(loop.FlowLitresPerMinute, u)} against {Show.Length(loop.HeadM, u)}.");
        output.WriteLine($"- Worst night: {Show.Temperature(house.DesignOutsideC, u)} outside, the house loses {Show.Power(house.DesignLossWatts, u)}; the heap bears {Show.Power(coil.MeanDrawnWatts, u)} on the mean. "
            + $"The house holds its minimum all winter in {a.ChanceOfHoldingMinimum:P0} of the seasons; its coldest moment (P10 / P50 / P90) is {Three(a.ColdestC, v => Show.Temperature(v, u))}.");
        output.WriteLine($"- Heat of use to the house: {Three(a.UsefulKWh, v => PlanShow.Heat(v, u))}; saved a season against {answer.Money.ReplacedFuel}: {Three(answer.Money.SavedASeason, v => $"{answer.Money.Money} {Whole(v)}")}.");
        if (answer.Sketch.Advice.FirstOrDefault(w => w.Worth) is { } first)
        {
            output.WriteLine($"- First change: {(u == UnitSystem.Metric ? first.Metric : first.Us)}");
        }

        if (a.ChanceOfTrip > 0)
        {
            output.WriteLine($"- Stopped by a trip in {a.ChanceOfTrip:P0} of the seasons, for {Three(a.TrippedHours, v => $"{v:F0} h")}. A person must find the cause and clear it; here nobody does, so the heat drawn is too low.");
        }

        output.WriteLine();
    }

    private static void WriteWords(TextWriter output, string title, IReadOnlyList<PlanWords> words, UnitSystem units)
    {
        if (words.Count == 0)
        {
            return;
        }

        output.WriteLine();
        output.WriteLine(title);
        foreach (string sentence in SketchText.Words(words, units))
        {
            output.WriteLine($"- {sentence}");
        }
    }

    private static void WriteMoney(ParseResult parse, MoneyResult m)
    {
        string Sum(Percentiles money) => Three(money, v => $"{m.Money} {Whole(v)}");
        List<(string, string)> rows = [.. m.Fuels.Select(f => (
            $"The same heat by {f.Name}",
            $"{Sum(f.Cost)}: {Three(f.Units, v => v < 10 ? $"{v:F1}" : $"{v:F0}")} {f.SoldBy} at {m.Money} {f.PricePerUnit:0.00} ({m.Money} {f.PricePerHeatKWh:0.000} a kWh of heat)"))];
        rows.Add(("Pump and blower", Sum(m.ElectricityCost)));
        rows.Add(("Chips and greens", $"{m.Money} {m.ChipsCost:F0} a season"));
        rows.Add(("Saved a season", $"{Sum(m.SavedASeason)} against {m.ReplacedFuel}"));
        rows.Add(("Parts bought", $"{m.Money} {m.Ledger.BoughtTotal:F0}: {Names(m.Ledger, false)}"));
        rows.Add(("Parts reused", $"{m.Money} {m.Ledger.ReusedTotal:F0} not spent: {Names(m.Ledger, true)}"));
        rows.Add(("Paid back", Three(m.PaybackSeasons, v => $"after {v:F1} seasons")));
        Answer.WriteRows(parse, rows);
    }

    private static string Names(Ledger ledger, bool reused)
    {
        string[] names = [.. ledger.Parts.Where(p => p.Reused == reused).Select(p => p.Name)];
        return names.Length > 0 ? string.Join(", ", names) : "none";
    }

    private static string Winters(PlanAnswer answer) => answer.Winters.Count == 1
        ? $"the winter from {answer.Winters[0].Start:yyyy-MM-dd} of {answer.Winters[0].File}"
        : $"{answer.Winters.Count} winters: {string.Join(", ", answer.Winters.GroupBy(w => w.File).Select(f => $"{f.Key} {string.Join(", ", f.Select(w => w.Start.Year))}"))}";

    // "-0" is noise to a reader.
    private static string Whole(double value) => $"{Math.Round(value) + 0.0:F0}";

    private static string Three(Percentiles p, Func<double, string> show)
    {
        string One(double? value) => value is { } v ? show(v) : "never";
        return p.P10 is null && p.P90 is null ? "never" : $"{One(p.P10)} / {One(p.P50)} / {One(p.P90)}";
    }
}
