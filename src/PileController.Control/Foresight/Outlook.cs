using PileController.Physics;

namespace PileController.Control.Foresight;

/// <summary>The weather and the house's gain of the hours ahead, from a forecast where one covers them, else from what was learned.</summary>
public static class Outlook
{
    // A forecast that is off now is put right by so much, fading over these hours.
    private const double CorrectionHours = 12;
    private const double MostOffKelvin = 8;

    // Where the air stands now is judged by so many of the last hours.
    private const int RecentHours = 3;

    /// <summary>Fills the hours ahead; hour 0 is the hour that holds <paramref name="at"/>.</summary>
    /// <param name="settings">What was told of the house.</param>
    /// <param name="weather">What was learned of the air outside.</param>
    /// <param name="house">What was learned of the house.</param>
    /// <param name="forecast">A forecast, or null.</param>
    /// <param name="at">Now.</param>
    /// <param name="outsideC">Takes the mean air outside of each hour, °C.</param>
    /// <param name="gainW">Takes what the house gains beyond draw in each hour, W; as long as <paramref name="outsideC"/>.</param>
    public static void Fill(
        ControlSettings settings, in WeatherMemory weather, in HouseMemory house, Forecast? forecast, in Instant at,
        Span<double> outsideC, Span<double> gainW)
    {
        WeatherLearned learned = weather.Learned;
        long hour = HourClock.Of(at);
        int local = HourClock.Local(hour, at.OffsetMinutes);
        double slow = learned.LastC.Length > 0 ? learned.SlowC : weather.NowC;
        double above = Level(learned, weather, local) - slow;
        double fade = Portable.Exp(Portable.Log(learned.Persistence) / 24);
        // What was not read this hour corrects nothing.
        bool read = weather.Seconds > 0;
        double off = read ? Math.Clamp(Off(forecast, weather.NowC, at), -MostOffKelvin, MostOffKelvin) : 0;
        double jump = 0;
        for (int k = 0; k < outsideC.Length; k++, above *= fade, jump *= fade)
        {
            int now = (local + k) % 24;
            double own = slow + above + learned.ShapeK[now];
            if (Told(forecast, hour + k) is { } told)
            {
                outsideC[k] = told + (off * Math.Max(0, 1 - (k / CorrectionHours)));
                jump = outsideC[k] - own;
            }
            else
            {
                // Where a forecast ends, its last word fades into what is known without it.
                outsideC[k] = own + jump;
            }

            gainW[k] = Sun(forecast, hour + k) is { } sun
                ? sun * settings.House.SunM2 * house.Learned.SunFactor
                : house.Learned.GainW[now];
        }
    }

    /// <summary>The forecast's sun of an hour, W/m²; null where it tells none.</summary>
    internal static double? Sun(Forecast? forecast, long hour) =>
        forecast?.SunWPerM2 is { } sun && Index(forecast, hour) is var i && i >= 0 && i < sun.Length ? sun[i] : null;

    /// <summary>Whether a forecast tells the air outside of an hour.</summary>
    internal static bool Covers(Forecast? forecast, long hour) => Told(forecast, hour) is not null;

    private static double? Told(Forecast? forecast, long hour) =>
        forecast is not null && Index(forecast, hour) is var i && i >= 0 && i < forecast.OutsideC.Length ? forecast.OutsideC[i] : null;

    private static long Index(Forecast forecast, long hour) => hour - (forecast.FromUtcMilliseconds / HourClock.Milliseconds);

    // Where the air stands beside its usual course of the day, °C: now, and the last hours.
    private static double Level(WeatherLearned learned, in WeatherMemory weather, int local)
    {
        bool read = weather.Seconds > 0 || learned.LastC.Length == 0;
        double sum = read ? weather.NowC - learned.ShapeK[local] : 0;
        int hours = Math.Min(RecentHours, learned.LastC.Length);
        for (int i = 1; i <= hours; i++)
        {
            sum += learned.LastC[^i] - learned.ShapeK[(local - i + 24) % 24];
        }

        return sum / ((read ? 1 : 0) + hours);
    }

    // How far the air now is above the forecast, K; hourly means are taken to hold in the middle of their hour.
    private static double Off(Forecast? forecast, double nowC, in Instant at)
    {
        long hour = HourClock.Of(at);
        if (Told(forecast, hour) is not { } told)
        {
            return 0;
        }

        double share = ((at.UtcMilliseconds / (double)HourClock.Milliseconds) - hour) - 0.5;
        double beside = Told(forecast, share < 0 ? hour - 1 : hour + 1) ?? told;
        return nowC - (told + (Math.Abs(share) * (beside - told)));
    }
}
