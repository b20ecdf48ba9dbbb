using PileController.Physics.Fluids;
using PileController.Physics.Heaps;
using PileController.Units;

namespace PileController.Plans.Sketch;

/// <summary>What is wished for against what the heap holds.</summary>
internal static class Claims
{
    // The wish as it is heard: a US gallon a minute from well water to a hot tap, all winter (common practice, no source).
    private const double WishLitresPerMinute = 3.785411784;
    private const double WishFromC = 10;
    private const double WishToC = 60;
    private const double JoulesPerKWh = 3.6e6;

    public static IReadOnlyList<PlanWords> Of(SketchTrials trials, SketchHeap heap, SketchHouse house)
    {
        double hours = 24.0 * trials.Days;
        double drawnW = trials.Base.DrawnWatts;
        double drawnKWh = trials.Base.Ledger.DrawnJ / JoulesPerKWh;
        double madeKWh = trials.Base.Ledger.GeneratedJ / JoulesPerKWh;
        double wishW = Water.DrawWatts(WishLitresPerMinute, WishFromC, WishToC, WishFromC);
        double wishKWh = wishW * hours / 1000;
        double rise = drawnW / (wishW / (WishToC - WishFromC));
        bool holds = house.DesignLossWatts <= drawnW;
        return
        [
            Say.Both(
                "howReckoned",
                u => $"Reckoned hour by hour in this weather for {trials.Days} days with as much drawn as the heap bears while its active zone keeps "
                    + $"{Show.Temperature(trials.Draw.FloorC + trials.Draw.MarginKelvin, u)}"
                    + (trials.HasWater
                        ? $", water at {Show.WaterFlow(trials.Draw.FlowLitresPerMinute, u)} coming back at {Show.Temperature(trials.Draw.ReturnC, u)}"
                        : "")
                    + ". A house does not want heat every hour: what it is given will be less."),
            Say.Both(
                "massBalance",
                u => $"{Show.Mass(heap.DegradableKg, u)} of the heap can burn within seasons, {PlanShow.HeatOfMass(Stuff.HeatPerSolids, u)}: "
                    + $"{PlanShow.Heat(heap.MostHeatKWh, u)} and no more. In {trials.Days} days it makes {PlanShow.Heat(madeKWh, u)} "
                    + $"({100 * madeKWh / heap.MostHeatKWh:F0} %), of which {PlanShow.Heat(drawnKWh, u)} can be drawn, {Show.Power(drawnW, u)} on the mean."),
            Say.Both(
                "hotWaterWish",
                u => $"{Show.WaterFlow(WishLitresPerMinute, u)} heated from {Show.Temperature(WishFromC, u)} to {Show.Temperature(WishToC, u)} all the while is "
                    + $"{Show.Power(wishW, u)}, {PlanShow.Heat(wishKWh, u)} in {trials.Days} days: "
                    + (wishKWh > heap.MostHeatKWh
                        ? $"more than all that can burn in this heap ({PlanShow.Heat(heap.MostHeatKWh, u)}). "
                        : wishW > drawnW ? "more than it can give at that pace. " : "this heap can give it. ")
                    + $"It bears {Show.Power(drawnW, u)} of that: the same flow gains {Show.Difference(rise, u)}.",
                wishW),
            Say.Both(
                "designNight",
                u => $"On the design night, {Show.Temperature(house.DesignOutsideC, u)} outside, the house loses {Show.Power(house.DesignLossWatts, u)} at "
                    + $"{Show.Temperature(house.InsideC, u)} inside. "
                    + (holds
                        ? "The heap's mean draw covers that."
                        : $"The heap's mean draw covers {100 * drawnW / Math.Max(1, house.DesignLossWatts):F0} % of it; the rest is stored sun, backup heat or a colder house."),
                house.DesignLossWatts),
        ];
    }
}
