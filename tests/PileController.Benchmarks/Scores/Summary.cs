using System.Globalization;

namespace PileController.Benchmarks.Scores;

/// <summary>The scoreboard in a few lines.</summary>
internal static class Summary
{
    public static IEnumerable<string> Lines(IReadOnlyList<Cell> cells)
    {
        Cell[] scored = [.. cells.Where(c => c.Scored)];
        foreach (string rule in (string[])["means", "cutout"])
        {
            double[] shares = [.. scored.Where(c => c.Policy == rule).Select(c => c.Captured).OfType<double>().Order()];
            if (shares.Length > 0)
            {
                yield return Line($"{rule}: captured in {shares.Length} scored cells: median {Median(shares):F3}, worst {shares[0]:F3}.");
            }
        }

        double[] atLeast = [.. cells.Where(c => c.Policy == "means").Select(c => Capture.AtLeast(cells, c)).OfType<double>().Order()];
        if (atLeast.Length > 0)
        {
            yield return Line($"means: captured at least, in {atLeast.Length} cells without a lawful bound, since none can leave less cold than none at all: median {Median(atLeast):F3}, worst {atLeast[0]:F3}.");
        }

        (Cell Means, Cell Cutout)[] pairs =
        [
            .. cells.Where(c => c.Policy == "means")
                .Select(c => (c, Capture.Beside(cells, c, "cutout")!)).Where(p => p.Item2 is not null),
        ];
        (Cell Means, Cell Cutout)[] told = [.. pairs.Where(p => p.Means.Scored)];
        if (told.Length > 0)
        {
            int better = told.Count(p => p.Means.ColdDegreeHours < p.Cutout.ColdDegreeHours);
            yield return Line($"means beats cutout in {better} of {told.Length} scored cells ({(double)better / told.Length:P0}).");
        }

        Cell[] could = [.. cells.Where(c => c.Policy == "means" && Capture.LawfulBound(cells, c) is not null)];
        if (could.Length > 0)
        {
            yield return Line($"means: {could.Sum(c => c.HoursBelowFloor):F1} h below the floor where the bound had none.");
        }

        Cell[] means = [.. cells.Where(c => c.Policy == "means")];
        if (means.Length > 0)
        {
            Cell narrow = means.MinBy(c => c.BandCoverage)!;
            Cell starts = means.MaxBy(c => c.PumpStartsPerDay)!;
            Cell strokes = means.MaxBy(c => c.ValveStrokesPerDay)!;
            yield return Line($"means: the band holds {means.Average(c => c.BandCoverage):P1} of the time in all cells together, worst {narrow.BandCoverage:P1} ({narrow.Name}).");
            yield return Line($"means: most pump starts {starts.PumpStartsPerDay:F1} a day ({starts.Name}), most valve strokes {strokes.ValveStrokesPerDay:F1} a day ({strokes.Name}).");
        }

        foreach ((Cell ours, Cell cutout) in pairs)
        {
            yield return Line($"means − cutout, avoided: {cutout.ColdDegreeHours - ours.ColdDegreeHours:+0.0;−0.0;0.0} K·h ({ours.Rig}, {ours.Weather}).");
        }
    }

    private static double Median(double[] ordered) =>
        0.5 * (ordered[(ordered.Length - 1) / 2] + ordered[ordered.Length / 2]);

    private static string Line(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
