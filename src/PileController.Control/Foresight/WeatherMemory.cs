namespace PileController.Control.Foresight;

/// <summary>What the controller remembers of the air outside: the hour so far and what was learned.</summary>
/// <param name="Hour">Which hour, since 1970-01-01T00:00Z; -1 before the first.</param>
/// <param name="Seconds">Time counted in it, s.</param>
/// <param name="KelvinSeconds">Temperature times time, °C·s.</param>
/// <param name="NowC">Air outside, last believed, °C.</param>
/// <param name="Learned">What was learned.</param>
public readonly record struct WeatherMemory(long Hour, double Seconds, double KelvinSeconds, double NowC, WeatherLearned Learned)
{
    // A gap of more hours than this begins the last day anew.
    private const int MostGapHours = 6;

    /// <summary>Nothing seen yet.</summary>
    public static WeatherMemory Fresh => new(-1, 0, 0, 5, WeatherLearned.Fresh);

    /// <summary>The standard error of an outlook at a lead, K.</summary>
    /// <param name="leadHours">How far ahead, h, 0 or more.</param>
    /// <param name="forecast">Whether a forecast covers that hour.</param>
    public double SigmaK(double leadHours, bool forecast) =>
        OutlookErrors.SigmaK(forecast ? Learned.ForecastErrorK2 : Learned.ErrorK2, leadHours);

    /// <summary>Takes in one tick. Only the end of an hour costs more than some sums.</summary>
    /// <param name="settings">What was told of the place.</param>
    /// <param name="memory">What the tick before handed on.</param>
    /// <param name="outsideC">Air outside, last believed, °C.</param>
    /// <param name="known">Whether it was read now.</param>
    /// <param name="forecast">The forecast, or null.</param>
    /// <param name="seconds">Time since the tick before, s.</param>
    /// <param name="at">Now.</param>
    public static WeatherMemory Step(
        ControlSettings settings, in WeatherMemory memory, double outsideC, bool known, Forecast? forecast, double seconds, in Instant at)
    {
        long hour = HourClock.Of(at);
        double counted = known ? seconds : 0;
        return hour == memory.Hour
            ? memory with
            {
                Seconds = memory.Seconds + counted,
                KelvinSeconds = memory.KelvinSeconds + (outsideC * counted),
                NowC = outsideC,
            }
            : new WeatherMemory(hour, counted, outsideC * counted, outsideC, memory.Closed(settings, outsideC, forecast, hour, at));
    }

    private WeatherLearned Closed(ControlSettings settings, double outsideC, Forecast? forecast, long hour, in Instant at)
    {
        if (Hour < 0 || hour < Hour)
        {
            return Learned;
        }

        WeatherLearned learned = hour - Hour > MostGapHours ? Learned with { LastC = [], Issued = [] } : Learned;
        learned = hour - Hour > WeatherLearned.MostWeeksHours ? learned with { WeeksC = null, WeeksHours = 0 } : learned;
        if (Seconds > 0)
        {
            double mean = KelvinSeconds / Seconds;
            // Hours that were missed are taken to have been as the one before.
            for (long h = Math.Max(Hour, hour - MostGapHours); h < hour; h++)
            {
                learned = learned.After(mean, h, at.OffsetMinutes);
            }
        }

        return learned.LastC.Length > 0 && WeatherLearned.Issues(HourClock.Local(hour, at.OffsetMinutes))
            ? learned with { Issued = [.. learned.Issued, Issue(settings, learned, outsideC, forecast, hour, at)] }
            : learned;
    }

    private static IssuedOutlook Issue(
        ControlSettings settings, WeatherLearned learned, double outsideC, Forecast? forecast, long hour, in Instant at)
    {
        ReadOnlySpan<int> leads = OutlookErrors.Leads;
        Span<double> outside = stackalloc double[leads[^1] + 1];
        Span<double> gain = stackalloc double[outside.Length];
        WeatherMemory begun = new(hour, 1, outsideC, outsideC, learned);
        Outlook.Fill(settings, begun, HouseMemory.Fresh, forecast, at, outside, gain);
        double[] kept = new double[leads.Length];
        for (int i = 0; i < leads.Length; i++)
        {
            kept[i] = outside[leads[i]];
        }

        long end = forecast is null ? 0 : forecast.EndUtcMilliseconds / HourClock.Milliseconds;
        return new IssuedOutlook(hour, end, kept);
    }
}
