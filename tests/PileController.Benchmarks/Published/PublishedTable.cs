using PileController.Physics.Sky.Weather;
using PileController.Plans.Ahead;
using PileController.Settings;
using PileController.Simulation;

namespace PileController.Benchmarks.Published;

/// <summary>Runs the published heaps with what is uncertain drawn anew for each run, and says where each report lies.</summary>
internal static class PublishedTable
{
    /// <summary>How many times each heap is run.</summary>
    public const int Runs = 40;

    private const long Seed = 1;

    // Places of the draw stream beyond those of a season's own draw.
    private const int InletPlace = 2000;

    /// <summary>Prints the table.</summary>
    public static int Print(TextWriter output)
    {
        foreach (string line in Lines())
        {
            output.WriteLine(line);
        }

        return 0;
    }

    /// <summary>The table in Markdown.</summary>
    public static IEnumerable<string> Lines()
    {
        yield return "| heap | report | reported | P10 | P50 | P90 | the report lies |";
        yield return "| --- | --- | --- | --- | --- | --- | --- |";
        foreach (PublishedHeap heap in PublishedHeaps.All)
        {
            IReadOnlyList<PublishedRun> runs = Run(heap);
            foreach (PublishedReport report in heap.Reports)
            {
                Percentiles p = Percentiles.Of(runs.Select(report.Computed));
                string reported = report.Low == report.High ? Number(report.Low) : $"{Number(report.Low)} to {Number(report.High)}";
                yield return $"| {heap.Name} | {report.Id}: {report.What} | {reported} {report.Unit} | {Number(p.P10)} | {Number(p.P50)} | {Number(p.P90)} | {Verdict(report, p)} |";
            }
        }
    }

    private static PublishedRun[] Run(PublishedHeap heap)
    {
        WeatherSeries weather = Weather(heap.Weather);
        long start = new DateTimeOffset(heap.Start.ToDateTime(TimeOnly.MinValue), TimeSpan.Zero).ToUnixTimeMilliseconds();
        PublishedRun[] runs = new PublishedRun[Runs];
        Parallel.For(0, Runs, i =>
        {
            SeasonDraw draw = SeasonDraw.Of(new Spreads(), Seed, i);
            (double low, double high) = heap.Draw.InletC;
            double inlet = low + ((high - low) * new DrawStream(Seed, i).Even(InletPlace));
            runs[i] = new PublishedRun(heap, draw.Heap(heap.Build), weather.Warmer(draw.WinterKelvin), start, inlet);
        });
        return runs;
    }

    private static WeatherSeries Weather(string file)
    {
        using StreamReader reader = new(Path.Combine(AppContext.BaseDirectory, "Weather", file));
        return WeatherFile.Read(reader, file, HoldingBuild.Place(PileSettings.AlderBank));
    }

    private static string Verdict(PublishedReport report, Percentiles p) => (p.P10, p.P90) switch
    {
        ({ } low, _) when report.High < low => "below P10",
        (_, { } high) when report.Low > high => "above P90",
        _ => "within",
    };

    private static string Number(double? value) => value is { } v
        ? FormattableString.Invariant($"{(Math.Abs(v) >= 100 ? Math.Round(v) : Math.Round(v, 1)):0.#}")
        : "never";
}
