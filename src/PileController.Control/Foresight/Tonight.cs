using PileController.Physics;

namespace PileController.Control.Foresight;

/// <summary>What is said of the house until the next morning. Without backup heat, as if none were fitted.</summary>
/// <param name="MinimumP10C">Least air of the house, °C; colder in one night of ten.</param>
/// <param name="MinimumP50C">Least air of the house, °C; colder in every other night.</param>
/// <param name="MinimumP90C">Least air of the house, °C; colder in nine nights of ten.</param>
/// <param name="AtUtcMilliseconds">When it is coldest, ms since 1970-01-01T00:00Z.</param>
/// <param name="ChanceOfHolding">Chance that the house stays at its minimum or above, 0 to 1.</param>
/// <param name="BackupWatts">Heat that would keep it there in nine nights of ten, W; null when none is needed.</param>
/// <param name="FromUtcMilliseconds">From when on it would be needed, ms since 1970-01-01T00:00Z; null when none is.</param>
/// <param name="UntilUtcMilliseconds">The morning the statement reaches to, ms since 1970-01-01T00:00Z.</param>
/// <param name="MadeUtcMilliseconds">When it was made, ms since 1970-01-01T00:00Z.</param>
/// <param name="ColderK">By how much colder the house is expected to become in air colder by a standard error, K.</param>
/// <param name="WarmerK">By how much less cold in air warmer by as much, K.</param>
/// <param name="OutsideSigmaK">That standard error at the coldest hour, K.</param>
/// <param name="UsesForecast">Whether a forecast covers the coldest hour.</param>
public sealed record Tonight(
    double MinimumP10C, double MinimumP50C, double MinimumP90C, long AtUtcMilliseconds, double ChanceOfHolding, double? BackupWatts,
    long? FromUtcMilliseconds, long UntilUtcMilliseconds, long MadeUtcMilliseconds, double ColderK, double WarmerK, double OutsideSigmaK,
    bool UsesForecast)
{
    /// <summary>Local hour to whose morning a statement reaches.</summary>
    public const int MorningHour = 9;

    /// <summary>Local hour at which the statement of the day is made, and held against what comes.</summary>
    public const int EveningHour = 16;

    /// <summary>Chance below which the grower is told.</summary>
    public const double PoorBelow = 0.8;

    private const double MostHeaterW = 100_000;
    private const double HeaterGrainW = 50;
    private const int Halvings = 6;

    private const int Slices = 4;
    private const double WidestSigmas = 2.6;
    private const double SideSigmas = 1.2;
    private const double SureSigmas = 4;

    // No night is certain.
    private const double MostChance = 0.995;

    /// <summary>Whether the chance is poor enough to tell the grower.</summary>
    public bool Poor => ChanceOfHolding < PoorBelow;

    /// <summary>What can be said now.</summary>
    /// <param name="settings">What was told of the house.</param>
    /// <param name="house">What is remembered of the house.</param>
    /// <param name="weather">What is remembered of the air outside.</param>
    /// <param name="forecast">A forecast, or null.</param>
    /// <param name="learned">What earlier statements have taught.</param>
    /// <param name="draw">What the heap is taken to give.</param>
    /// <param name="at">Now.</param>
    public static Tonight Of(
        ControlSettings settings, in HouseMemory house, in WeatherMemory weather, Forecast? forecast,
        TonightLearned learned, in NightDraw draw, in Instant at)
    {
        long until = Morning(at);
        Span<double> outside = stackalloc double[NightRun.MostHours];
        Span<double> gain = stackalloc double[NightRun.MostHours];
        Span<double> sigma = stackalloc double[NightRun.MostHours];
        Outlook.Fill(settings, weather, house, forecast, at, outside, gain);
        long first = HourClock.Of(at);
        for (int k = 0; k < sigma.Length; k++)
        {
            outside[k] += learned.BiasK;
            sigma[k] = Math.Sqrt(learned.Spread2) * weather.SigmaK(k, Outlook.Covers(forecast, first + k));
        }

        NightRun run = new(settings, house, draw, at, until, outside, sigma, gain);
        double line = settings.HouseMinimumC;
        NightRun.Night middle = run.Live(0, line);
        NightLeast least = new(middle.LeastC, run.IdleC(0));
        double leastC = learned.LeastC(least, line, draw.CloserKelvin);
        double colder = (leastC - learned.LeastC(run.Least(-SideSigmas), line, draw.CloserKelvin)) / SideSigmas;
        double warmer = (learned.LeastC(run.Least(SideSigmas), line, draw.CloserKelvin) - leastC) / SideSigmas;
        double tenth = Bell.Tenth * colder;
        double ninetieth = Bell.Tenth * warmer;
        double own2 = Bell.Tenth * Bell.Tenth * learned.Own2(least, line, draw.CloserKelvin);
        double p10 = leastC - Math.Sqrt((tenth * tenth) + own2);
        double p90 = leastC + Math.Sqrt((ninetieth * ninetieth) + own2);
        (double? heater, long? from) = p10 >= line ? (null, null) : Heater(run, p10, line, at);
        long coldest = HourClock.Of(at with { UtcMilliseconds = middle.LeastUtcMilliseconds });
        return new Tonight(
            p10, leastC, p90, middle.LeastUtcMilliseconds, Chance(run, learned, line, draw.CloserKelvin), heater, from, until, at.UtcMilliseconds,
            colder, warmer, sigma[(int)Math.Clamp(coldest - first, 0, sigma.Length - 1)], Outlook.Covers(forecast, coldest));
    }

    /// <summary>The next morning, ms since 1970-01-01T00:00Z.</summary>
    internal static long Morning(in Instant at)
    {
        double hours = MorningHour - at.LocalHour;
        return at.UtcMilliseconds + (long)Math.Round((hours > 0 ? hours : hours + 24) * HourClock.Milliseconds);
    }

    // The nights from much colder to much warmer than expected, each with its weight. The house answers them unevenly: as
    // long as the heap can keep the frost out, a colder night is hardly colder inside.
    private static double Chance(in NightRun run, TonightLearned learned, double line, double closerK)
    {
        // Most nights are plain: what even the coldest of them leaves above the line is sure.
        double sure = line + Math.Max(Course.UsualHeadKelvin, SureSigmas * Math.Sqrt(learned.OwnK2));
        if (run.IdleC(-WidestSigmas) > sure)
        {
            return MostChance;
        }

        double sum = 0;
        double weights = 0;
        for (int i = -Slices; i <= Slices; i++)
        {
            double sigmas = (double)i * WidestSigmas / Slices;
            double weight = Portable.Exp(-0.5 * sigmas * sigmas);
            weights += weight;
            sum += weight * learned.Chance(run.Least(sigmas), line, closerK);
        }

        return Math.Clamp(sum / weights, 1 - MostChance, MostChance);
    }

    // A heater is turned on an hour before the house is cold. The heat by which the night at the tenth in a hundred just holds. What the statement adds to the model's own night
    // (bias, own error) stands as it is.
    private static (double? Watts, long? From) Heater(in NightRun run, double p10, double line, in Instant at)
    {
        NightRun.Night cold = run.Live(-Bell.Tenth, line);
        double shift = p10 - cold.LeastC;
        long below = run.Live(-Bell.Tenth, line - shift).BelowUtcMilliseconds ?? at.UtcMilliseconds;
        long from = Math.Max(at.UtcMilliseconds, below - HourClock.Milliseconds);
        double least = 0;
        double most = 500;
        while (most < MostHeaterW && Falls(run, most))
        {
            (least, most) = (most, 2 * most);
        }

        for (int i = 0; i < Halvings && most - least > HeaterGrainW; i++)
        {
            double half = 0.5 * (least + most);
            (least, most) = Falls(run, half) ? (half, most) : (least, half);
        }

        return (HeaterGrainW * Math.Ceiling(most / HeaterGrainW), from);

        bool Falls(in NightRun night, double watts) => night.Live(-Bell.Tenth, line, watts, from).LeastC + shift < line;
    }
}
