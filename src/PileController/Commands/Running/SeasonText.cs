using System.CommandLine;
using PileController.Commands.Shell;
using PileController.Seasons;
using PileController.Settings;
using PileController.Units;

namespace PileController.Commands.Running;

/// <summary>A season's result for people.</summary>
internal static class SeasonText
{
    public static void Write(ParseResult parse, SeasonResult r, PileSettings settings)
    {
        string Degrees(double celsius) => Show.Temperature(celsius, settings.Units);
        Answer.WriteRows(
            parse,
            ("Draw rule", r.Policy),
            ("Days", $"{r.Days} ({r.Ticks} ticks, {r.TicksPerSecond:F0} a second)"),
            ("Heat drawn", $"{r.DrawnKWh:F0} kWh true, {r.MeteredDrawKWh:F0} kWh by the rig's own meter"),
            ("Useful to the house", $"{r.UsefulKWh:F0} kWh at the set point"),
            ("Heat made, lost", $"{r.GeneratedKWh:F0} kWh made, {r.LostKWh:F0} kWh lost, {r.StoredChangeKWh:F1} kWh stored"),
            ("Balance error", $"{r.EnergyErrorFraction:E1} of what passed"),
            ("Dry mass lost", $"{r.DryMassLostKg:F0} kg, and {r.WaterLostKg:F0} kg of water"),
            ("House below its minimum", $"{r.HoursBelowMinimum:F0} h, {r.ColdDegreeHours:F0} K·h; coldest {Degrees(r.MinHouseC)}"),
            ("Heap lit", r.LitOnDay is { } lit ? $"on day {lit:F1}" : "never"),
            ("Heap below its floor", $"{r.HoursBelowFloor:F1} h; {Least(r, Degrees)}"),
            ("Heap gone quiet", r.StalledOnDay is { } stalled ? $"on day {stalled:F0}" : "no"),
            ("Frost guard", $"{r.FrostGuardHours:F1} h"),
            ("Held off by the battery", $"{r.BatteryHeldHours:F0} h"),
            ("Stopped by a trip", $"{r.TrippedHours:F0} h"),
            ("Said of the nights", r.Tonight is { } t
                ? $"{t.Nights} nights; mean square of chance less outcome {t.Brier:F3} (share held so far {t.BrierClimatology:F3}, last night again {t.BrierPersistence:F3})"
                : "nothing: the heap never lit"),
            ("Chance said, and held", r.Tonight is { } told
                ? string.Join("; ", told.Reliability.Select(row => $"{row.Said:P0}: {row.Happened:P0} of {row.Nights}"))
                : "none"),
            ("Weather not measured", r.NotMeasured.Count == 0 ? "none" : string.Join("; ", r.NotMeasured)),
            ("Electricity", $"pump {r.PumpKWh:F2} kWh, blower {r.BlowerKWh:F2} kWh"));
    }

    private static string Least(SeasonResult r, Func<double, string> degrees) =>
        r.MinActiveZoneC is { } zone && r.MinTurnsC is { } turns
            ? $"least active zone {degrees(zone)}, least at the turns {degrees(turns)}"
            : "it had not lit";
}
