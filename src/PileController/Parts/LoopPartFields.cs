using PileController.Physics.Fluids;
using PileController.Settings;
using PileController.Settings.Fields;
using PileController.Settings.Kinds;
using static PileController.Settings.Kinds.Kind;

namespace PileController.Parts;

/// <summary>Keys of a loop's file.</summary>
internal static class LoopPartFields
{
    private const double LeastTurnM = 0.1;

    private static readonly FieldTable<RunPart> Run = new()
    {
        { "tube", new TubeKind(), r => r.Tube, (r, v) => r with { Tube = v }, "The tube by name.", true },
        { "length", Metres(0, 5000), r => r.LengthM, (r, v) => r with { LengthM = v }, "Length of the run.", true },
        { "fittings", new ManyKind<FittingCount>(new FittingKind()), r => r.Fittings, (r, v) => r with { Fittings = v }, "Fittings in it." },
        { "k", Number(0, 10_000, "velocity heads"), r => r.ExtraK, (r, v) => r with { ExtraK = v }, "Any other loss in it, filter or meter." },
        { "turnDiameter", Metres(0, 50), r => r.TurnDiameterM, (r, v) => r with { TurnDiameterM = v }, "Diameter of the turns it is wound in, 0 m for a straight run." },
    };

    public static readonly FieldTable<LoopPart> Table = new()
    {
        { "water", Celsius(Water.LowestC, Water.HighestC), l => l.WaterC, (l, v) => l with { WaterC = v }, "Temperature of the water: cold water is the harder to move." },
        { "staticLift", Metres(0, 100), l => l.StaticLiftM, (l, v) => l with { StaticLiftM = v }, "Lift that nothing gives back, 0 m in a closed, full loop." },
        { "valve", Share(0, 1), l => l.ValveOpen, (l, v) => l with { ValveOpen = v }, "Open share of the throttling valve's area." },
        { "duty", Share(0.01, 1), l => l.Duty, (l, v) => l with { Duty = v }, "Duty the pump runs at." },
        { "hours", Hours(0, 24), l => l.HoursPerDay, (l, v) => l with { HoursPerDay = v }, "Hours a day it runs." },
        { "panel", Watts(0, 20_000), l => l.PanelWatts, (l, v) => l with { PanelWatts = v }, "Solar panel in full sun, 0 W for none." },
        { "battery", WattHours(0, 1_000_000), l => l.BatteryWattHours, (l, v) => l with { BatteryWattHours = v }, "Battery, 0 Wh for none." },
        { "sunHours", Hours(0, 24), l => l.SunHours, (l, v) => l with { SunHours = v }, "Hours of full sun on a design day; about 2 in a northern winter." },
        { "runs", Run, new RunPart(), _ => new RunPart(), l => l.Runs, (l, v) => l with { Runs = v }, "Runs of pipe, one after the other." },
    };

    /// <summary>What cannot be a loop although each value by itself could.</summary>
    public static IEnumerable<SettingsFault> Check(LoopPart loop) => loop.Runs.Count == 0
        ? [new SettingsFault("runs", "an empty list", "one run of pipe or more")]
        : loop.Runs.SelectMany((run, i) => run.TurnDiameterM is > 0 and < LeastTurnM
            ? new[] { new SettingsFault($"runs[{i}].turnDiameter", $"\"{run.TurnDiameterM} m\"", $"0 m for a straight run, or {LeastTurnM} m to 50 m") }
            : []);
}
