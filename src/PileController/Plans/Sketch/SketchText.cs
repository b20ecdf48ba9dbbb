using PileController.Units;

namespace PileController.Plans.Sketch;

/// <summary>The sketch as lines for people.</summary>
internal static class SketchText
{
    /// <summary>Rows of name and value, in the units chosen; see <see cref="Words"/> for the sentences.</summary>
    public static IReadOnlyList<(string Name, string Value)> Rows(PlanSketch sketch, UnitSystem u)
    {
        (SketchHeap heap, SketchCoil coil, SketchLoop loop, SketchAir air, SketchHouse house) =
            (sketch.Heap, sketch.Coil, sketch.Loop, sketch.Air, sketch.House);
        return
        [
            ("Heap", $"{PlanShow.Bulk(heap.VolumeM3, u)} of chips, {Show.Mass(heap.WetMassKg, u)}, {heap.MoisturePercent:F0} % water, radius {Show.Length(heap.RadiusM, u)}, height {Show.Length(heap.HeightM, u)}, air space {heap.FreeAirSpacePercent:F0} %"),
            ("Lights", heap.LitOnDay is double lit ? $"on day {lit:F0}" : "never in this weather"),
            ("Past its best", heap.FadesOnDay is double fades
                ? $"on day {fades:F0}, when it makes less than half of its best week; it goes on more weakly, in the last week with {Show.Power(heap.Weeks[^1].GeneratedWatts, u)}"
                : "not within these days"),
            ("Water lost", Show.Mass(heap.WaterLostKg, u)),
            ("Heat it can bear", $"{Show.Power(coil.MeanDrawnWatts, u)} on the mean of all days if drawn every hour; with the controller and a house: see the season ahead"),
            ("Turns", $"{coil.Turns:F1} turns, {Show.Length(coil.LengthM, u)} at {Show.Length(coil.RadiusM, u)}; {PlanShow.PerDegree(coil.FirstHourWPerK, u)} in the first hour, {PlanShow.PerDegree(coil.MonthWPerK, u)} after a month"),
            .. coil.Places.Select(p => ($"  at {Show.Length(p.RadiusM, u)}", Show.Power(p.MeanDrawnWatts, u))),
            ("Pump", $"{Show.WaterFlow(loop.FlowLitresPerMinute, u)} against {Show.Length(loop.HeadM, u)}, {loop.PumpWatts:F0} W, {loop.WattHoursPerDay:F0} Wh a day if it never stops"),
            ("Air in the pipe", loop.PurgesAir ? "carried along at full flow" : "not carried along: fit a vent at every high point"),
            ("Round the loop", loop.TransitSeconds is double seconds ? Show.Time(seconds) : "never: the pump does not lift so high"),
            ("Still line freezes", loop.MinutesToFreezeStill is double m ? $"after {Show.Time(60 * m)} on the design night" : "not on the design night"),
            ("Closed duct", $"{Show.Power(air.ClosedWatts, u)}, air leaves at {Show.Temperature(air.ClosedOutletC, u)}"),
            ("Through the heap", $"{Show.Power(air.ThroughSensibleWatts + air.ThroughLatentWatts, u)}, of which {Show.Power(air.ThroughLatentWatts, u)} in its vapour; {Show.Mass(air.ThroughWaterLostKgPerDay, u)} of water a day{Beyond(air, heap, u)}"),
            ("House, design night", $"{Show.Power(house.DesignLossWatts, u)} at {Show.Temperature(house.DesignOutsideC, u)} outside, {Show.Temperature(house.InsideC, u)} inside"),
            ("House, season", $"{PlanShow.Heat(house.SeasonLossKWh, u)} before any sun"),
        ];
    }

    // What moist air takes at full blower is seldom what a heap can go on giving.
    private static string Beyond(SketchAir air, SketchHeap heap, UnitSystem u)
    {
        double most = heap.Weeks.Max(w => w.GeneratedWatts);
        return air.ThroughSensibleWatts + air.ThroughLatentWatts > most
            ? $"; no heap keeps that up, this one makes {Show.Power(most, u)} in its best week"
            : "";
    }

    /// <summary>Sentences of one list, in the units chosen.</summary>
    public static IEnumerable<string> Words(IEnumerable<PlanWords> words, UnitSystem u) =>
        words.Select(w => u == UnitSystem.Metric ? w.Metric : w.Us);
}
