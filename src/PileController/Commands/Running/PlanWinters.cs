using System.Text.RegularExpressions;
using PileController.Physics.Sky.Weather;
using PileController.Plans.Ahead;
using PileController.Settings;
using PileController.Simulation;

namespace PileController.Commands.Running;

/// <summary>Reads the weather files of a plan and finds their winters.</summary>
internal static partial class PlanWinters
{
    // A year without a 29 February, for typical years that are stitched of several.
    private const int TypicalYear = 2025;
    private const int TypicalHours = 8760;

    /// <summary>When the winters asked for begin and how long they are.</summary>
    internal readonly record struct Span(int Month, int Day, int Days)
    {
        public override string ToString() => $"{Days} days from {Month:D2}-{Day:D2}";
    }

    /// <summary>All winters of all files; null when a file cannot be used, which is then said on the error stream.</summary>
    /// <param name="paths">The files; none for the demo's weather.</param>
    /// <param name="settings">Where the holding lies.</param>
    /// <param name="span">Which days of the year are wanted.</param>
    /// <param name="error">Where complaints go.</param>
    public static IReadOnlyList<AheadWinter>? Read(IReadOnlyList<string> paths, PileSettings settings, Span span, TextWriter error)
    {
        if (paths.GroupBy(Path.GetFullPath).FirstOrDefault(same => same.Count() > 1) is { } twice)
        {
            // Counted twice its winters would weigh twice.
            error.WriteLine($"--weather is \"{twice.First()}\" {twice.Count()} times; allowed: each file once.");
            return null;
        }

        int offset = HoldingBuild.StandardOffsetMinutes(settings);
        (string Name, WeatherSeries? Weather)[] files = paths.Count == 0
            ? [(Demo.WeatherFileName, Demo.Weather(HoldingBuild.Place(settings)))]
            : [.. paths.Select(p => (Path.GetFileName(p), Open(p, settings, error)))];
        List<AheadWinter> all = [];
        bool sound = true;
        foreach ((string name, WeatherSeries? weather) in files)
        {
            if (weather is null)
            {
                sound = false;
                continue;
            }

            IReadOnlyList<AheadWinter> winters = WinterFinding.In(name, weather, span.Month, span.Day, span.Days, offset);
            if (winters.Count == 0)
            {
                error.WriteLine(
                    $"--weather is \"{name}\", which runs from {Local(weather.CoversFrom, offset)} to {Local(weather.CoversTo, offset)} "
                    + $"and covers no winter; allowed: a file that covers {span} (--start, --days) from its first to its last hour, once at least.");
                sound = false;
            }

            foreach (WeatherGap gap in winters.Select(w => WinterFinding.GapIn(w, span.Days)).OfType<WeatherGap>().Distinct())
            {
                error.WriteLine($"--weather is \"{name}\": {gap.Sentence} Allowed: winters without gaps.");
                sound = false;
            }

            all.AddRange(winters);
        }

        return sound ? all : null;
    }

    private static WeatherSeries? Open(string path, PileSettings settings, TextWriter error)
    {
        try
        {
            string text = File.ReadAllText(path);
            bool typical = text.StartsWith("LOCATION,", StringComparison.Ordinal) && !LeapDay().IsMatch(text);
            WeatherSeries weather = WeatherFile.Read(
                new StringReader(text), Path.GetFileName(path), HoldingBuild.Place(settings), year: typical ? TypicalYear : null);
            return typical && weather.OutsideC.Count == TypicalHours ? Whole(weather, path, error) : weather;
        }
        catch (WeatherFileException wrong)
        {
            foreach (string fault in wrong.Faults)
            {
                error.WriteLine($"--weather: {fault}");
            }
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException)
        {
            error.WriteLine($"--weather is \"{path}\": {e.Message.TrimEnd('.')}; allowed: the path of a weather file");
        }

        return null;
    }

    [GeneratedRegex(@"(?m)^\s*\d+,\s*2,\s*29,")]
    private static partial Regex LeapDay();

    // A typical year is run twice over, so every gap of it lies in some winter.
    private static WeatherSeries? Whole(WeatherSeries year, string path, TextWriter error)
    {
        foreach (WeatherGap gap in year.Gaps)
        {
            error.WriteLine($"--weather is \"{path}\": {gap.Sentence} Allowed: a typical year without gaps.");
        }

        return year.Gaps.Count == 0 ? year.Twice() : null;
    }

    private static string Local(long utcMilliseconds, int offsetMinutes) => DateTimeOffset.FromUnixTimeMilliseconds(utcMilliseconds)
        .ToOffset(TimeSpan.FromMinutes(offsetMinutes)).ToString("yyyy-MM-dd HH:mm");
}
