namespace PileController.Control.Means;

/// <summary>
/// How far above its floor the heap is kept by the time of year before heat goes to comfort. A cool heap breathes and
/// burns slowly: drawn on for comfort in autumn, it keeps its fuel and its water for the coldest weeks. Before those it
/// is left to warm up, since no spell can be met with heat that is not there; after them the rest may be spent, but for what weeks of cold ask.
/// </summary>
public static class SeasonReserve
{
    // The coldest weeks come about a month after the shortest day (common practice, no source): day of the year in the north.
    private const double ColdestDay = 15;
    private const double DaysAYear = 365.25;

    // Days from there, between which the reserve rises and falls. A heap left alone is warm again within some ten
    // days (from seasons of the simulated heap); before that, warmth only burns fuel.
    private const double RiseFrom = -11;
    private const double RiseTo = -7;
    private const double FallFrom = 20;
    private const double FallTo = 40;

    // For each kelvin by which the last weeks lay below the house's minimum it is so much larger, up to the most (from seasons of
    // the simulated holding, the recorded winters made up to six kelvin colder among them). By the last days instead, a cold
    // week in a mild autumn kept heat in the heap that then only burned its fuel.
    private const double ColdShare = 1.2;
    private const double MostColdKelvin = 8;

    // The reserve that is told is meant for a house that loses so much for each joule its heap holds, W/J: Alder Bank's.
    private const double UsualLossPerHeap = 220 / 2.6e7;

    /// <summary>The reserve for comfort at a moment, K above the floor.</summary>
    /// <param name="settings">Its two ends, and the latitude: south of the equator the year is turned.</param>
    /// <param name="at">The moment.</param>
    /// <param name="lastWeeksC">Mean of the air outside over the last weeks, °C; null where nothing is known of it.</param>
    public static double Kelvin(ControlSettings settings, in Instant at, double? lastWeeksC)
    {
        ArgumentNullException.ThrowIfNull(settings);
        double share = Share(at.Utc.DayOfYear + (settings.LatitudeDegrees < 0 ? 0.5 * DaysAYear : 0));
        double comfort = ComfortKelvin(settings, lastWeeksC);
        return comfort + (share * Math.Max(0, settings.MidwinterReserveKelvin - comfort));
    }

    // The same reserve lasts a leaky house, or a small heap, for fewer cold hours: there it is the larger, up to midwinter's. So it is when the
    // winter has come early: cold weeks are mostly followed by more of them.
    private static double ComfortKelvin(ControlSettings settings, double? lastWeeksC)
    {
        if (settings.ComfortReserveKelvin <= 0)
        {
            return 0;
        }

        double lossPerHeap = settings.HouseLossWPerK / settings.HeapHeatCapacityJPerK;
        double cold = Math.Clamp(settings.HouseMinimumC - (lastWeeksC ?? settings.HouseMinimumC), 0, MostColdKelvin);
        double grown = (settings.ComfortReserveKelvin + (ColdShare * cold)) * Math.Max(1, lossPerHeap / UsualLossPerHeap);
        return Math.Min(grown, Math.Max(settings.ComfortReserveKelvin, settings.MidwinterReserveKelvin));
    }

    private static double Share(double dayOfYear)
    {
        double days = (dayOfYear - ColdestDay) % DaysAYear;
        days = days > 0.5 * DaysAYear ? days - DaysAYear : days < -0.5 * DaysAYear ? days + DaysAYear : days;
        double rise = (days - RiseFrom) / (RiseTo - RiseFrom);
        double fall = (FallTo - days) / (FallTo - FallFrom);
        return Math.Clamp(Math.Min(rise, fall), 0, 1);
    }
}
