namespace PileController.Ledgers;

/// <summary>How a heap came to its end.</summary>
/// <param name="BestWeekWatts">The most of its net heat on the mean of seven days, W; null with fewer than four days recorded of any seven.</param>
/// <param name="BestWeekEndsOn">Last day of that week.</param>
/// <param name="FadedOn">First day after it on which the mean of seven days was below half of it; null: not yet.</param>
/// <param name="LastBorneOn">Last day on which the heap could bear a draw for an hour or more; null: none.</param>
internal sealed record Fading(double? BestWeekWatts, DateOnly? BestWeekEndsOn, DateOnly? FadedOn, DateOnly? LastBorneOn)
{
    /// <summary>The share of its best week below which a heap has faded: the same half as in a plan of the season ahead.</summary>
    public const double FadedShare = 0.5;

    private const int Week = 7;
    private const int LeastDays = 4;
    private const double LeastBorneSeconds = 3600;

    /// <summary>Finds it in the days of a season, which may come in any order.</summary>
    public static Fading Of(IReadOnlyList<DayEntry> days)
    {
        SortedDictionary<DateOnly, (double J, double S, double Borne)> net = [];
        foreach (DayEntry day in days)
        {
            (double j, double s, double borne) = net.GetValueOrDefault(day.Date);
            net[day.Date] = (j + day.Figures.NetJoules, s + day.Figures.NetSeconds, borne + day.Figures.BorneSeconds);
        }

        List<(DateOnly Ends, double Watts)> weeks = [];
        foreach (DateOnly date in net.Keys)
        {
            (double J, double S, double Borne)[] week = [.. Enumerable.Range(0, Week)
                .Select(back => net.GetValueOrDefault(date.AddDays(-back))).Where(d => d.S > 0)];
            if (week.Length >= LeastDays)
            {
                weeks.Add((date, week.Sum(d => d.J) / week.Sum(d => d.S)));
            }
        }

        DateOnly? borneOn = net.Where(d => d.Value.Borne >= LeastBorneSeconds).Select(d => (DateOnly?)d.Key).LastOrDefault();
        if (weeks.Count == 0)
        {
            return new Fading(null, null, null, borneOn);
        }

        (DateOnly ends, double best) = weeks.MaxBy(w => w.Watts);
        DateOnly? faded = best > 0
            ? weeks.Where(w => w.Ends > ends && w.Watts < FadedShare * best).Select(w => (DateOnly?)w.Ends).FirstOrDefault()
            : null;
        return new Fading(best, ends, faded, borneOn);
    }
}
