using PileController.Physics;

namespace PileController.Control.Foresight;

/// <summary>What hours of the air outside have taught. Not changed after it was made; a new one is made at the end of an hour.</summary>
public sealed record WeatherLearned
{
    private const int DayHours = 24;
    private const double ShapeRate = 0.25;

    // Time constant of the mean of the last days, h.
    private const double SlowHours = 5 * 24;

    /// <summary>That of the mean of the last weeks, h; until so many are known it is the mean of all that are.</summary>
    internal const int MostWeeksHours = 16 * 24;

    // What persistence was before, in days' worth of squares of about 3 K.
    private const double PriorK2 = 60;
    private const double PriorPersistence = 0.75;
    private const double Forgetting = 0.97;

    // Outlooks are kept for scoring from these local hours on.
    private const int IssueEvery = 6;
    private const int IssueAt = 4;

    /// <summary>Hourly means of the last hours, °C, the newest last; as many as there were, up to 24.</summary>
    public double[] LastC { get; init; } = [];

    /// <summary>By how much each local hour of the day lies above the mean of the day round it, K.</summary>
    public double[] ShapeK { get; init; } = PriorShape();

    /// <summary>How many hours the shape was learned from.</summary>
    public int ShapeHours { get; init; }

    /// <summary>Mean of the last days, °C.</summary>
    public double SlowC { get; init; }

    /// <summary>Mean of the last weeks, °C; null before the first hour.</summary>
    public double? WeeksC { get; init; }

    /// <summary>How many hours that mean was made of, 0 to 384.</summary>
    public int WeeksHours { get; init; }

    /// <summary>Sum of products of neighbouring days' deviations from that mean, K²; old days fade.</summary>
    public double DayProductK2 { get; init; } = PriorPersistence * PriorK2;

    /// <summary>Sum of squares that goes with it, K².</summary>
    public double DaySquareK2 { get; init; } = PriorK2;

    /// <summary>The last full day's deviation, K.</summary>
    public double DayDeviationK { get; init; }

    /// <summary>Mean squares of the error of the controller's own outlook by lead, K².</summary>
    public double[] ErrorK2 { get; init; } = OutlookErrors.OwnPrior;

    /// <summary>The same where a forecast was given, K².</summary>
    public double[] ForecastErrorK2 { get; init; } = OutlookErrors.ForecastPrior;

    /// <summary>Outlooks that are not all due yet, the oldest first.</summary>
    public IssuedOutlook[] Issued { get; init; } = [];

    /// <summary>Nothing learned.</summary>
    public static WeatherLearned Fresh { get; } = new();

    /// <summary>Share of a day's deviation from the mean of the last days that the next one keeps, 0.3 to 0.95.</summary>
    internal double Persistence => Math.Clamp(DayProductK2 / DaySquareK2, 0.3, 0.95);

    /// <summary>Takes in an hour that has ended.</summary>
    /// <param name="meanC">Its mean, °C.</param>
    /// <param name="hour">Which, hours since 1970-01-01T00:00Z.</param>
    /// <param name="offsetMinutes">Local time minus UTC, minutes.</param>
    internal WeatherLearned After(double meanC, long hour, int offsetMinutes)
    {
        double[] last = LastC.Length < DayHours ? [.. LastC, meanC] : [.. LastC.AsSpan(1), meanC];
        double slow = LastC.Length == 0 ? meanC : SlowC + ((meanC - SlowC) / SlowHours);
        int hours = Math.Min(WeeksHours + 1, MostWeeksHours);
        double weeks = WeeksC is { } before ? before + ((meanC - before) / hours) : meanC;
        WeatherLearned next = Scored(meanC, hour) with { LastC = last, SlowC = slow, WeeksC = weeks, WeeksHours = hours };
        if (last.Length < DayHours)
        {
            return next;
        }

        double day = 0;
        foreach (double celsius in last)
        {
            day += celsius / DayHours;
        }

        // The hour half a day ago lies in the middle of the day that is known of.
        const int middle = DayHours / 2;
        int shaped = HourClock.Local(hour - middle, offsetMinutes);
        double[] shape = (double[])ShapeK.Clone();
        double rate = Math.Max(ShapeRate, 1.0 / (2 + (ShapeHours / DayHours)));
        shape[shaped] += rate * (last[DayHours - 1 - middle] - day - shape[shaped]);
        next = next with { ShapeK = shape, ShapeHours = ShapeHours + 1 };
        if (HourClock.Local(hour, offsetMinutes) != DayHours - 1)
        {
            return next;
        }

        double deviation = day - slow;
        return next with
        {
            DayProductK2 = (Forgetting * DayProductK2) + (deviation * DayDeviationK),
            DaySquareK2 = (Forgetting * DaySquareK2) + (DayDeviationK * DayDeviationK),
            DayDeviationK = deviation,
        };
    }

    /// <summary>Whether an outlook from this local hour on is to be kept.</summary>
    internal static bool Issues(int localHour) => localHour % IssueEvery == IssueAt;

    // Coldest before sunrise, warmest in the afternoon (common practice, no source); the first days take its place.
    private static double[] PriorShape() =>
        [.. Enumerable.Range(0, DayHours).Select(h => 2 * Portable.Cos(2 * Math.PI * (h - 14.5) / DayHours))];

    private WeatherLearned Scored(double meanC, long hour)
    {
        if (Issued.Length == 0)
        {
            return this;
        }

        double[] own = (double[])ErrorK2.Clone();
        double[] told = (double[])ForecastErrorK2.Clone();
        ReadOnlySpan<int> leads = OutlookErrors.Leads;
        foreach (IssuedOutlook issued in Issued)
        {
            int lead = leads.IndexOf((int)Math.Clamp(hour - issued.Hour, -1, int.MaxValue));
            if (lead >= 0)
            {
                double[] errors = hour < issued.ForecastEndHour ? told : own;
                errors[lead] = OutlookErrors.Learned(errors[lead], meanC - issued.OutsideC[lead]);
            }
        }

        long oldest = hour - leads[^1];
        return this with { ErrorK2 = own, ForecastErrorK2 = told, Issued = Array.FindAll(Issued, i => i.Hour > oldest && i.Hour <= hour) };
    }
}
