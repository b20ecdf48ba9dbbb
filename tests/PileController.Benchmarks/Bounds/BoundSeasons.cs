using PileController.Physics.Sky.Weather;
using PileController.Seasons;
using PileController.Settings;
using PileController.Simulation;

namespace PileController.Benchmarks.Bounds;

/// <summary>A season with the name it is told by.</summary>
internal sealed record BoundSeason(string Name, SeasonPlan Plan);

/// <summary>The seasons a command line asks for.</summary>
internal static class BoundSeasons
{
    private const int WinterDays = 150;

    /// <summary>The seasons; null when something is wrong, which is then said.</summary>
    public static IReadOnlyList<BoundSeason>? Of(
        PileSettings settings, string? weatherPath, DateOnly? start, int days, string? winter, TextWriter error)
    {
        if (weatherPath is null)
        {
            return Recorded(settings, start, winter, error);
        }

        if (start is not { } first)
        {
            error.WriteLine("--start is not given; with --weather it has to be: a day as 2012-11-01");
            return null;
        }

        try
        {
            SeasonPlan plan = SeasonPlanning.Of(settings, settings.Control, Read(settings, weatherPath), first, days);
            if (SeasonPlanning.Uncovered(plan) is { } why)
            {
                error.WriteLine($"--start and --days ask for more than the weather holds: {why}.");
                return null;
            }

            return [new BoundSeason($"{Path.GetFileNameWithoutExtension(weatherPath)} from {first:yyyy-MM-dd}", plan)];
        }
        catch (WeatherFileException wrong)
        {
            foreach (string fault in wrong.Faults)
            {
                error.WriteLine(fault);
            }
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException)
        {
            error.WriteLine($"--weather is \"{weatherPath}\": {e.Message.TrimEnd('.')}; allowed: the path of a weather file");
        }

        return null;
    }

    private static List<BoundSeason>? Recorded(PileSettings settings, DateOnly? start, string? winter, TextWriter error)
    {
        if (start is not null)
        {
            error.WriteLine("--start goes with --weather only; the recorded winters have their own first day.");
            return null;
        }

        List<BoundSeason> seasons = [];
        foreach (Winter w in Winter.All.Where(w => winter is null || w.Name.Contains(winter, StringComparison.OrdinalIgnoreCase)))
        {
            WeatherSeries weather = Read(settings, Path.Combine(AppContext.BaseDirectory, "Weather", w.File));
            seasons.Add(new BoundSeason(
                w.Name, SeasonPlanning.Of(settings, settings.Control, weather, new DateOnly(w.Year, 11, 1), WinterDays)));
        }

        if (seasons.Count == 0)
        {
            error.WriteLine($"--winter is \"{winter}\"; allowed: a part of {string.Join(" or ", Winter.All.Select(w => w.Name))}");
            return null;
        }

        return seasons;
    }

    private static WeatherSeries Read(PileSettings settings, string path)
    {
        using StreamReader reader = new(path);
        return WeatherFile.Read(reader, Path.GetFileName(path), HoldingBuild.Place(settings));
    }
}
