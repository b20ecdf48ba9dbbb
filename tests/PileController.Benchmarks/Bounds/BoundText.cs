using System.Diagnostics;
using System.Globalization;
using PileController.Benchmarks.Scores;
using PileController.Control;
using PileController.Seasons;

namespace PileController.Benchmarks.Bounds;

/// <summary>Finds the bound of a season and tells it, with what the rules come to beside it.</summary>
internal sealed class BoundText(TextWriter output, TextWriter error)
{
    public void Head() => output.WriteLine(
        "Cold degree-hours, K·h. Captured = (none − rule) / (none − bound). No plan goes below the certificate.");

    public void One(BoundSeason asked, string cache, int rounds)
    {
        Stopwatch clock = Stopwatch.StartNew();
        void Told(string line) => error.WriteLine(Line($"{asked.Name}, {clock.Elapsed.TotalSeconds:F0} s, {line}"));
        SeasonPlan season = asked.Plan;
        RuleRun none = Starts.Live(season, DrawPolicy.None);
        RuleRun cutout = Starts.Live(season, DrawPolicy.Cutout);
        RuleRun means = Starts.Live(season, DrawPolicy.Means);
        BoundResult bound = Bound.Of(season, () => Starts.Of(season, means, cutout), cache, rounds, Environment.ProcessorCount, Told);
        output.WriteLine();
        output.WriteLine(asked.Name);
        Row("none", Line($"{none.ColdDegreeHours:F1}"));
        Row("cutout", Line($"{cutout.ColdDegreeHours:F1}, captured {Share(bound, none, cutout)}"));
        Row("means", Line($"{means.ColdDegreeHours:F1}, captured {Share(bound, none, means)}"));
        Row("bound", Line($"{bound.ColdDegreeHours:F1}, with {bound.HoursBelowFloor:F1} h below the floor (least active zone {bound.LeastActiveZoneC:F2} °C), {bound.DrawnKWh:F0} kWh drawn"));
        Row("five starts", string.Join(", ", bound.Starts.Select(s => Line($"{s.Name} {s.ColdDegreeHours:F1}"))));
        Row("their spread", Line($"{bound.Spread:P2} of what the bound avoids"));
        Row("certificate", Line($"{bound.CertificateColdDegreeHours:F1}"));
        Row("gap", Line($"{bound.ColdDegreeHours - bound.CertificateColdDegreeHours:F1}, {bound.Gap:P1} of what the bound avoids"));
        Row("took", Line($"{clock.Elapsed.TotalSeconds:F0} s"));
    }

    private static string Share(BoundResult bound, RuleRun none, RuleRun rule) =>
        bound.Captured(none.ColdDegreeHours, rule.ColdDegreeHours) is { } share
            ? Line($"{share:F3}")
            : Line($"not scored: less than {Capture.LeastScored:F0} K·h to win");

    private static string Line(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);

    private void Row(string head, string text) => output.WriteLine($"  {head,-13} {text}");
}
