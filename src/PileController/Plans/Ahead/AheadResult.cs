namespace PileController.Plans.Ahead;

/// <summary>What the seasons ahead came to, as percentiles over all of them. Names are those of the JSON; SI, unit in the key.</summary>
/// <param name="Seasons">How many seasons were run.</param>
/// <param name="Days">How long each was.</param>
/// <param name="DrawnKWh">Heat drawn out of the heap.</param>
/// <param name="DrawnWatts">The same as a mean over the season.</param>
/// <param name="UsefulKWh">Heat by which the house was warmer, at its set point.</param>
/// <param name="GeneratedKWh">Heat the microbes made.</param>
/// <param name="GeneratedWatts">The same as a mean over the season.</param>
/// <param name="MostHeatKWh">The most that the degradable mass could give: nothing above this is to be had.</param>
/// <param name="ColdestC">Coldest moment in the house.</param>
/// <param name="HoursBelowMinimum">Hours in which the house was below its minimum.</param>
/// <param name="ColdDegreeHours">By how much and how long, K·h.</param>
/// <param name="ChanceOfHoldingMinimum">Share of the seasons in which it never was.</param>
/// <param name="LitOnDay">Day on which the heap lit; null where a tenth, half or more never did.</param>
/// <param name="ChanceOfLighting">Share of the seasons in which it lit.</param>
/// <param name="FadedOnDay">Day on which it faded; null where it did not within the season.</param>
/// <param name="ChanceOfFading">Share of the seasons in which it did.</param>
/// <param name="WaterLostKg">Water that left the heap.</param>
/// <param name="DryMassLostKg">Dry matter burnt.</param>
/// <param name="PumpKWh">Electricity of the pump.</param>
/// <param name="BlowerKWh">Electricity of the blower.</param>
/// <param name="LargestEnergyErrorFraction">The worst energy balance of all, of what passed.</param>
/// <param name="TrippedHours">Hours in which a trip stopped the water: nobody clears one.</param>
/// <param name="ChanceOfTrip">Share of the seasons with such an hour.</param>
internal sealed record AheadResult(
    int Seasons, int Days, Percentiles DrawnKWh, Percentiles DrawnWatts, Percentiles UsefulKWh, Percentiles GeneratedKWh,
    Percentiles GeneratedWatts, Percentiles MostHeatKWh, Percentiles ColdestC, Percentiles HoursBelowMinimum,
    Percentiles ColdDegreeHours, double ChanceOfHoldingMinimum, Percentiles LitOnDay, double ChanceOfLighting,
    Percentiles FadedOnDay, double ChanceOfFading, Percentiles WaterLostKg, Percentiles DryMassLostKg, Percentiles PumpKWh,
    Percentiles BlowerKWh, double LargestEnergyErrorFraction, Percentiles TrippedHours,
    double ChanceOfTrip)
{
    /// <summary>Sums up the seasons.</summary>
    /// <param name="outcomes">What each came to, one at least.</param>
    /// <param name="days">How long each was.</param>
    public static AheadResult Of(IReadOnlyList<SeasonOutcome> outcomes, int days)
    {
        Percentiles Over(Func<SeasonOutcome, double?> of) => Percentiles.Of(outcomes.Select(of));
        double Chance(Func<SeasonOutcome, bool> holds) => (double)outcomes.Count(holds) / outcomes.Count;
        double Watts(double kWh) => kWh * 1000 / (24 * days);
        Percentiles drawn = Over(o => o.DrawnKWh);
        Percentiles generated = Over(o => o.GeneratedKWh);
        return new AheadResult(
            outcomes.Count, days, drawn, drawn.Select(Watts), Over(o => o.UsefulKWh), generated, generated.Select(Watts),
            Over(o => o.MostHeatKWh), Over(o => o.ColdestC), Over(o => o.HoursBelowMinimum), Over(o => o.ColdDegreeHours),
            Chance(o => o.HoursBelowMinimum <= 0), Over(o => o.LitOnDay), Chance(o => o.LitOnDay is not null),
            Over(o => o.FadedOnDay), Chance(o => o.FadedOnDay is not null), Over(o => o.WaterLostKg), Over(o => o.DryMassLostKg),
            Over(o => o.PumpKWh), Over(o => o.BlowerKWh), outcomes.Max(o => o.EnergyErrorFraction), Over(o => o.TrippedHours),
            Chance(o => o.TrippedHours > 0));
    }
}
