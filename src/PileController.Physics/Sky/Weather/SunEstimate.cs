namespace PileController.Physics.Sky.Weather;

/// <summary>
/// Sun where a file has none: each local day's share of the sun outside the air from its span of temperature
/// (<see cref="Sunshine.ShareFromSpan"/>), given to the hours as the sun outside the air has it.
/// </summary>
internal static class SunEstimate
{
    private const int Day = 24;
    private const int Samples = 6;

    /// <summary>Fills the sun of a grid whose temperatures are complete.</summary>
    public static void Fill(HourGrid grid, Place place, WeatherOptions options)
    {
        long offset = (long)place.UtcOffset.TotalMilliseconds;
        int hours = grid.OutsideC.Length;
        int firstMidnight = (int)(Day - ((grid.FirstUtcMilliseconds + offset) / WeatherSeries.HourMilliseconds % Day)) % Day;
        double share = double.NaN;
        int pending = 0;
        for (int start = firstMidnight == 0 ? 0 : firstMidnight - Day; start < hours; start += Day)
        {
            int from = Math.Max(start, 0);
            int before = Math.Min(start + Day, hours);
            if (before - from >= Day / 2)
            {
                share = Share(grid.OutsideC, from, before, place, options);
            }

            // A first day of a few hours waits for the share of the next.
            if (!double.IsNaN(share))
            {
                FillHours(grid, place, pending, before, share);
                pending = before;
            }
        }

        if (pending < hours)
        {
            FillHours(grid, place, pending, hours, Share(grid.OutsideC, 0, hours, place, options));
        }
    }

    /// <summary>The same for a grid that starts at a local midnight, with the extremes of its days known.</summary>
    public static void FillFromSpans(HourGrid grid, Place place, WeatherOptions options, double[] lowestC, double[] highestC)
    {
        for (int day = 0; day < lowestC.Length; day++)
        {
            double share = Sunshine.ShareFromSpan(highestC[day] - lowestC[day], place.AltitudeM, options.HargreavesCoefficient);
            int before = day == lowestC.Length - 1 ? grid.SunWPerM2.Length : (day + 1) * Day;
            FillHours(grid, place, day * Day, before, share);
        }
    }

    private static double Share(double[] outsideC, int from, int before, Place place, WeatherOptions options)
    {
        ReadOnlySpan<double> day = outsideC.AsSpan(from, before - from);
        double lowest = day[0];
        double highest = day[0];
        foreach (double value in day)
        {
            lowest = Math.Min(lowest, value);
            highest = Math.Max(highest, value);
        }

        return Sunshine.ShareFromSpan(highest - lowest, place.AltitudeM, options.HargreavesCoefficient);
    }

    private static void FillHours(HourGrid grid, Place place, int from, int before, double share)
    {
        for (int hour = from; hour < before; hour++)
        {
            grid.SunWPerM2[hour] = share * MeanOutsideAir(place, grid.Instant(hour));
        }
    }

    // The mean over the hour round the instant, so that the hours add up to the day.
    private static double MeanOutsideAir(Place place, long instant)
    {
        // In half an hour the sun moves 7.5° at most.
        if (Sun.At(place.LatitudeDegrees, place.LongitudeDegrees, instant).ElevationDegrees < -8)
        {
            return 0;
        }

        const long step = WeatherSeries.HourMilliseconds / Samples;
        long first = instant - (WeatherSeries.HourMilliseconds / 2) + (step / 2);
        double sum = 0;
        for (int i = 0; i < Samples; i++)
        {
            sum += Sunshine.OutsideAirWPerM2(Sun.At(place.LatitudeDegrees, place.LongitudeDegrees, first + (i * step)));
        }

        return sum / Samples;
    }
}
