using System.CommandLine;
using System.Globalization;
using PileController.Commands.Shell;
using PileController.Control;
using PileController.Forecasts;
using PileController.Physics.Sky.Weather;
using PileController.Seasons;
using PileController.Settings;
using PileController.Simulation;

namespace PileController.Commands.Running;

/// <summary>season: runs a whole winter on recorded weather.</summary>
internal static class SeasonCommand
{
    private static readonly Option<string?> SettingsPath = new("--settings") { Description = "The settings file; Alder Bank's when left out." };
    private static readonly Option<string?> WeatherPath = new("--weather") { Description = "Weather: hourly CSV, daily CSV or EPW; the demo's when left out." };
    private static readonly Option<DateOnly> Start = Ask.Of<DateOnly>("--start", "First day, as 2012-11-01.", ReadDay).Needed();
    private static readonly Option<int> Days = Ask.Whole("--days", "How many days, 1 to 400.", 1, 400).Needed();
    private static readonly Option<DrawPolicy> Policy = Ask.Word(
        "--policy", "The draw rule:", [.. Enum.GetValues<DrawPolicy>().Select(p => (p.ToString().ToLowerInvariant(), p))]).Needed();
    private static readonly Option<double> TickSeconds = Ask.Number("--tick", "Length of a tick; as in the settings when left out,", 1, 60, "s").Unless(0);
    private static readonly Option<int> Seed = Ask.Whole("--seed", "Seed of the probes' noise, 0 to 1000000; as in the settings when left out.", 0, 1_000_000).Unless(-1);
    private static readonly Option<string?> Keep = new("--keep") { Description = "Write the holding as it stands at the end to this file, to go on from." };
    private static readonly Option<string?> ForecastPath = new("--forecast") { Description = "Foretold weather, hour by hour: CSV with the header utc,outsideC,sunWPerM2, or JSON; none when left out." };
    private static readonly Option<bool> Json = Ask.Json();

    public static Command Create()
    {
        PileCommand command = new(
            "season", "Runs a whole winter on recorded weather under one draw rule.",
            "PileController season --weather tests/Weather/new-york-daily-2012-2013.csv --start 2012-11-01 --days 150 --policy means")
        {
            SettingsPath, WeatherPath, Start, Days, Policy, TickSeconds, Seed, ForecastPath, Keep, Json,
        };
        command.SetAction(RunAsync);
        return command;
    }

    private static async Task<int> RunAsync(ParseResult parse, CancellationToken cancellation)
    {
        TextWriter error = parse.InvocationConfiguration.Error;
        if (SettingsSource.Sound(parse, SettingsPath) is not { } settings)
        {
            return ExitCodes.WrongUse;
        }

        if (ReadWeather(parse.GetValue(WeatherPath), settings, error) is not { } weather)
        {
            return ExitCodes.WrongUse;
        }

        ForecastSeries? forecast = null;
        if (parse.GetValue(ForecastPath) is { } foretold && (forecast = ReadForecast(foretold, error)) is null)
        {
            return ExitCodes.WrongUse;
        }

        double tick = parse.GetValue(TickSeconds);
        int seed = parse.GetValue(Seed);
        ControlSettings control = settings.Control with
        {
            Policy = parse.GetValue(Policy),
            TickSeconds = tick > 0 ? tick : settings.Control.TickSeconds,
        };
        PileSettings with = seed >= 0 ? settings with { Rig = settings.Rig with { Seed = seed } } : settings;
        SeasonPlan plan = SeasonPlanning.Of(with, control, weather, parse.GetValue(Start), parse.GetValue(Days)) with { Forecast = forecast };
        if (SeasonPlanning.Uncovered(plan) is { } why)
        {
            error.WriteLine($"--start and --days ask for more than the weather holds: {why}.");
            return ExitCodes.WrongUse;
        }

        (SeasonResult result, HoldingState? final) = await SeasonRun.RunAsync(plan, TimeProvider.System, Progress(), cancellation);
        if (parse.GetValue(Keep) is { } path)
        {
            if (final is null)
            {
                error.WriteLine("--keep needs a season that ends at a whole minute of the plant.");
                return ExitCodes.WrongUse;
            }

            await File.WriteAllTextAsync(path, new WarmStart(WarmStart.MarkOf(with), final).ToJson(), cancellation);
        }

        if (parse.GetValue(Json))
        {
            Answer.WriteJson(parse, result);
        }
        else
        {
            SeasonText.Write(parse, result, with);
        }

        return ExitCodes.Done;
    }

    private static WeatherSeries? ReadWeather(string? path, PileSettings settings, TextWriter error)
    {
        if (path is null)
        {
            return Demo.Weather(HoldingBuild.Place(settings));
        }

        try
        {
            using StreamReader reader = new(path);
            WeatherSeries weather = WeatherFile.Read(reader, Path.GetFileName(path), HoldingBuild.Place(settings));
            foreach (WeatherGap gap in weather.Gaps)
            {
                error.WriteLine(gap.Sentence);
            }

            return weather;
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
            error.WriteLine($"--weather is \"{path}\": {e.Message.TrimEnd('.')}; allowed: the path of a weather file");
        }

        return null;
    }

    private static ForecastSeries? ReadForecast(string path, TextWriter error)
    {
        try
        {
            if (ForecastText.TryRead(File.ReadAllText(path), Path.GetFileName(path), out ForecastSeries? series, out string? fault))
            {
                return series;
            }

            error.WriteLine($"--forecast is \"{path}\": {fault}");
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException)
        {
            error.WriteLine($"--forecast is \"{path}\": {e.Message.TrimEnd('.')}; allowed: the path of a file with foretold weather");
        }

        return null;
    }

    // Long work shows progress on a terminal and none when piped.
    private static Action<double>? Progress() => Console.IsErrorRedirected
        ? null
        : share => Console.Error.Write(share >= 1 ? "\r          \r" : $"\r{share:P0} ");

    private static bool ReadDay(string text, out DateOnly value, [System.Diagnostics.CodeAnalysis.NotNullWhen(false)] out string? allowed)
    {
        bool good = DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out value);
        allowed = good ? null : "a day as 2012-11-01";
        return good;
    }
}
