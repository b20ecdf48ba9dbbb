using System.Globalization;
using System.Text.Json;
using PileController.Benchmarks.Bounds;
using PileController.Control;
using PileController.Physics.Sky.Weather;
using PileController.Settings;
using PileController.Simulation;

namespace PileController.Benchmarks.Scores;

/// <summary>All draw rules × winters × rigs, in one table; seeds fixed.</summary>
internal static class Scoreboard
{
    private const double WattsPerKilowatt = 1000;
    private static readonly JsonSerializerOptions Machine = new(JsonSerializerDefaults.Web);
    private static readonly string[] Quick = ["Alder Bank", "small heap", "dead probe at the turns", "told 40 % too little"];

    /// <summary>Runs it.</summary>
    /// <param name="args">--cells quick, --bound (find what bounds are not kept; so does --cells quick), --cache DIR (where they are kept), --weather FILE (repeatable), --policy RULE (repeatable), --rig NAME (repeatable), --tick SECONDS (longer ticks for a quick look), --json FILE.</param>
    /// <param name="output">Where the table goes.</param>
    public static int Run(string[] args, TextWriter output)
    {
        bool quick = Given(args, "--cells").Contains("quick");
        RigCase[] rigs = quick ? [.. RigCase.All.Where(r => Quick.Contains(r.Name))] : [.. RigCase.All];
        string[] names = [.. Given(args, "--rig")];
        rigs = names.Length > 0 ? [.. rigs.Where(r => names.Contains(r.Name))] : rigs;
        string[] files = [.. Given(args, "--weather")];
        DrawPolicy[] policies = [.. Given(args, "--policy").Select(p => Enum.Parse<DrawPolicy>(p, true))];
        policies = policies.Length > 0 ? [.. policies.Append(DrawPolicy.None).Distinct()] : Enum.GetValues<DrawPolicy>();
        (string Name, WeatherSeries Weather, DateOnly Start)[] winters = files.Length > 0
            ? [.. files.SelectMany(Found)]
            : [.. Winter.All.Select(w => (w.Name, w.Weather(), new DateOnly(w.Year, 11, 1)))];
        double tick = double.Parse(Given(args, "--tick").FirstOrDefault("10"), CultureInfo.InvariantCulture);
        (RigCase Rig, int Winter, DrawPolicy Policy)[] asked =
            [.. rigs.SelectMany(r => winters.Select((_, w) => (r, w)).SelectMany(x => policies.Select(p => (x.r, x.w, p))))];
        (Cell Cell, double SetPoint)[] run = new (Cell, double)[asked.Length];
        Parallel.For(0, asked.Length, new ParallelOptions { MaxDegreeOfParallelism = Environment.ProcessorCount }, i =>
        {
            (RigCase rig, int w, DrawPolicy policy) = asked[i];
            run[i] = CellRun.Of(rig, winters[w].Name, winters[w].Weather, winters[w].Start, Winter.Days, policy, tick);
        });
        CellBounds bounds = new(
            Given(args, "--cache").FirstOrDefault(Path.Combine(AppContext.BaseDirectory, "bounds")), Bound.Rounds, Console.Error.WriteLine);
        Cell?[] best = bounds.Of(
            [.. rigs.SelectMany(r => winters.Select(w => (r, w.Name, w.Weather, w.Start)))], quick || args.Contains("--bound"));
        Cell[] cells = Capture.Filled([.. run.Select((one, i) => Useful(one, asked[i].Rig, run)), .. best.OfType<Cell>()]);
        Print(cells, output);
        PrintTonight(cells, output);

        if (best.Any(b => b is null))
        {
            output.WriteLine();
            output.WriteLine($"{best.Count(b => b is null)} of {best.Length} bounds are not kept, so nothing is captured there; --bound finds them.");
        }

        output.WriteLine();
        foreach (string line in Summary.Lines(cells))
        {
            output.WriteLine(line);
        }

        if (Given(args, "--json").FirstOrDefault() is { } path)
        {
            File.WriteAllText(path, JsonSerializer.Serialize(new { cells }, Machine));
        }

        return 0;
    }

    private static Cell Useful((Cell Cell, double SetPoint) one, RigCase rig, (Cell Cell, double SetPoint)[] all)
    {
        double none = all.First(o => o.Cell.Rig == one.Cell.Rig && o.Cell.Weather == one.Cell.Weather && o.Cell.Policy == "none").SetPoint;
        return one.Cell with { UsefulKWh = rig.Settings.House.LossWPerK * (none - one.SetPoint) / WattsPerKilowatt };
    }

    private static void Print(Cell[] cells, TextWriter output)
    {
        output.WriteLine("| rig | winter | rule | cold K·h | avoided K·h | captured | by cutout | h below floor | undershoot K | useful kWh | quiet on day | frost guard h | pump starts a day | valve strokes a day | band holds | half-width K | net heat error | certificate K·h |");
        output.WriteLine("| --- | --- | --- | --- | --- | --- | --- | --- | --- | --- | --- | --- | --- | --- | --- | --- | --- | --- |");
        foreach (Cell c in cells)
        {
            double none = cells.First(o => o.Rig == c.Rig && o.Weather == c.Weather && o.Policy == "none").ColdDegreeHours;
            output.WriteLine(string.Create(CultureInfo.InvariantCulture,
                $"| {c.Rig} | {c.Weather} | {c.Policy} | {c.ColdDegreeHours:F0} | {none - c.ColdDegreeHours:F0} | {Share(c, c.Captured)} | {Share(c, c.CapturedByCutout)} | {c.HoursBelowFloor:F0} | {c.UndershootK:F1} | {c.UsefulKWh:F0} | {c.StalledOnDay:F0} | {c.FrostGuardHours:F0} | {c.PumpStartsPerDay:F1} | {c.ValveStrokesPerDay:F1} | {c.BandCoverage:P0} | {c.BandHalfWidthK:F1} | {c.NetHeatError:P0} | {c.Certificate:F0} |"));
        }
    }

    private static string Share(Cell cell, double? share) =>
        share is not { } told ? "" : cell.Scored ? told.ToString("F3", CultureInfo.InvariantCulture) : "not scored";

    private static void PrintTonight(Cell[] cells, TextWriter output)
    {
        output.WriteLine();
        output.WriteLine("| rig | winter | rule | nights | Brier | of the share held so far | of last night again | said: happened (nights) |");
        output.WriteLine("| --- | --- | --- | --- | --- | --- | --- | --- |");
        foreach (Cell c in cells)
        {
            if (c.Tonight is { } t)
            {
                string rows = string.Join("; ", t.Reliability.Select(r => string.Create(
                    CultureInfo.InvariantCulture, $"{r.Said:P0}: {r.Happened:P0} ({r.Nights})")));
                output.WriteLine(string.Create(CultureInfo.InvariantCulture,
                    $"| {c.Rig} | {c.Weather} | {c.Policy} | {t.Nights} | {t.Brier:F3} | {t.BrierClimatology:F3} | {t.BrierPersistence:F3} | {rows} |"));
            }
        }
    }

    private static IEnumerable<string> Given(string[] args, string option) =>
        args.Zip(args.Skip(1)).Where(pair => pair.First == option).Select(pair => pair.Second);

    private static IEnumerable<(string, WeatherSeries, DateOnly)> Found(string path)
    {
        using StreamReader reader = new(path);
        WeatherSeries weather = WeatherFile.Read(reader, Path.GetFileName(path), HoldingBuild.Place(PileSettings.AlderBank));
        DateTimeOffset from = DateTimeOffset.FromUnixTimeMilliseconds(weather.CoversFrom);
        for (int year = from.Year; year < from.Year + 50; year++)
        {
            DateOnly start = new(year, 11, 1);
            long first = new DateTimeOffset(start.ToDateTime(TimeOnly.MinValue), TimeSpan.Zero).ToUnixTimeMilliseconds();
            if (first >= weather.CoversFrom && first + (Winter.Days * 86_400_000L) <= weather.CoversTo)
            {
                yield return ($"{Path.GetFileNameWithoutExtension(path)} {year}", weather, start);
            }
        }
    }
}
