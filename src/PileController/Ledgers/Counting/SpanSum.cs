using PileController.Control.Decisions;
using PileController.Records.Accounts;

namespace PileController.Ledgers.Counting;

/// <summary>What a day, a month or a season came to. Names are those of the JSON.</summary>
/// <param name="Span">The date, the month or the name.</param>
/// <param name="Days">How many dates were counted.</param>
/// <param name="FromUtcMs">Wall time of the first tick counted.</param>
/// <param name="ToUtcMs">Wall time of the last tick counted.</param>
/// <param name="WaterKWh">Heat by water.</param>
/// <param name="WaterErrorKWh">Half-width of its error band: those of all ticks added up, without cancelling.</param>
/// <param name="AirKWh">Heat by air, which has no meter of its own and so no error band.</param>
/// <param name="PumpKWh">Electricity of the pump.</param>
/// <param name="BlowerKWh">Electricity of the blower.</param>
/// <param name="Litres">Water moved.</param>
/// <param name="RecordedHours">How long ticks were recorded.</param>
/// <param name="RunningHours">How long the pump ran.</param>
/// <param name="InferredHours">Of these, with flow, supply or return not measured: the heat of them is inferred.</param>
/// <param name="BelowFloorHours">How long the lit heap was below its floor.</param>
/// <param name="FrostGuardHours">How long the frost guard had it.</param>
/// <param name="PumpStarts">How often the pump started.</param>
/// <param name="Trips">How often an interlock tripped.</param>
/// <param name="Nights">Nights with readings of the house.</param>
/// <param name="NightsKept">Of these, the house never below its minimum.</param>
/// <param name="ColdestNightKept">The one of them that was coldest outside; null when there is none.</param>
internal sealed record SpanSum(
    string Span, int Days, long FromUtcMs, long ToUtcMs, double WaterKWh, double WaterErrorKWh, double AirKWh, double PumpKWh,
    double BlowerKWh, double Litres, double RecordedHours, double RunningHours, double InferredHours, double BelowFloorHours,
    double FrostGuardHours, int PumpStarts, int Trips, int Nights, int NightsKept, NightKept? ColdestNightKept)
{
    private const double JoulesPerKWh = 3.6e6;
    private const double SecondsPerHour = 3600;

    /// <summary>All heat, kWh.</summary>
    public double HeatKWh => WaterKWh + AirKWh;

    /// <summary>All electricity, kWh.</summary>
    public double ElectricityKWh => PumpKWh + BlowerKWh;

    /// <summary>Share of the pump's time in which the heat was inferred, 0 to 1.</summary>
    public double InferredShare => RunningHours > 0 ? InferredHours / RunningHours : 0;

    /// <summary>Adds up stretches, in the order in which they were lived.</summary>
    public static SpanSum Of(string span, IReadOnlyList<DayEntry> days)
    {
        Totals energy = default;
        TickFigures all = default;
        foreach (DayEntry day in days)
        {
            energy = Both(energy, day.Energy);
            all = all.Plus(day.Figures);
        }

        (DateOnly Date, TickFigures Figures)[] nights = [.. ByDate(days)
            .Select(date => (date.Key, date.Aggregate(default(TickFigures), (sum, day) => sum.Plus(day.Figures))))
            .Where(night => night.Item2.NightSeconds > 0)];
        (DateOnly Date, TickFigures Figures)[] kept = [.. nights.Where(n => n.Figures.NightBelowMinimumSeconds == 0)];
        NightKept? coldest = kept
            .Where(n => n.Figures is { NightLeastOutsideCelsius: not null, NightLeastHouseCelsius: not null })
            .OrderBy(n => n.Figures.NightLeastOutsideCelsius)
            .Select(n => new NightKept(n.Date, n.Figures.NightLeastOutsideCelsius!.Value, n.Figures.NightLeastHouseCelsius!.Value))
            .FirstOrDefault();
        return new SpanSum(
            span, days.Select(d => d.Date).Distinct().Count(), days.Count == 0 ? 0 : days[0].FromUtcMilliseconds,
            days.Count == 0 ? 0 : days[^1].ToUtcMilliseconds, energy.WaterJoules / JoulesPerKWh, energy.WaterErrorJoules / JoulesPerKWh,
            energy.AirJoules / JoulesPerKWh, energy.PumpJoules / JoulesPerKWh, energy.BlowerJoules / JoulesPerKWh, energy.Litres,
            all.RecordedSeconds / SecondsPerHour, all.RunningSeconds / SecondsPerHour, all.InferredSeconds / SecondsPerHour,
            all.BelowFloorSeconds / SecondsPerHour, all.FrostGuardSeconds / SecondsPerHour, all.PumpStarts, all.Trips, nights.Length,
            kept.Length, coldest);
    }

    /// <summary>One sum a date, in the order of the dates.</summary>
    public static IReadOnlyList<SpanSum> ByDay(IReadOnlyList<DayEntry> days) =>
        [.. ByDate(days).Select(date => Of(date.Key.ToString("yyyy-MM-dd"), [.. date]))];

    /// <summary>One sum a month, in the order of the months.</summary>
    public static IReadOnlyList<SpanSum> ByMonth(IReadOnlyList<DayEntry> days) =>
        [.. days.GroupBy(d => d.Date.ToString("yyyy-MM")).OrderBy(m => m.Key, StringComparer.Ordinal).Select(month => Of(month.Key, [.. month]))];

    private static IEnumerable<IGrouping<DateOnly, DayEntry>> ByDate(IReadOnlyList<DayEntry> days) =>
        days.GroupBy(d => d.Date).OrderBy(d => d.Key);

    private static Totals Both(in Totals one, in Totals other) => new(
        one.WaterJoules + other.WaterJoules, one.WaterErrorJoules + other.WaterErrorJoules, one.AirJoules + other.AirJoules,
        one.PumpJoules + other.PumpJoules, one.BlowerJoules + other.BlowerJoules, one.Litres + other.Litres);
}

/// <summary>A night in which the house was never below its minimum. A night runs from local midnight to 09:00.</summary>
/// <param name="Date">Date of its morning.</param>
/// <param name="OutsideC">Least air outside.</param>
/// <param name="HouseC">Least air in the house.</param>
internal sealed record NightKept(DateOnly Date, double OutsideC, double HouseC);
