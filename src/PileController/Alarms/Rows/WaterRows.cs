using PileController.Control.Readings;
using static PileController.Alarms.AlarmPriority;
using static PileController.Alarms.Signs;

namespace PileController.Alarms.Rows;

/// <summary>Pump, lines, tank and valve.</summary>
internal static class WaterRows
{
    private const double Minute = 60;

    // A standing pump takes a little in its electronics (common practice, no source).
    private const double StandbyWatts = 2;

    // The guard moves water at 2.5 °C; below this it does not keep up. Half a kelvin over freezing is the probe's error
    // (DS18B20 data sheet, from memory).
    private const double LineFreezesC = 0.5;

    private const string PullThePlug = "Pull the plug of the rig before you reach in. Water from the heap can scald; mains parts are for a licensed electrician.";

    public static IEnumerable<AlarmRow> Of(AlarmPlace place) =>
    [
        new("leak", "Water where none should be", High, AlarmGroup.Water, place.Interlock("leak"))
        {
            Cause = "The leak switch is wet: a joint, a split pipe, an overflowing tank, or condensate.",
            Consequence = "The rig is stopped. Water near mains parts can kill; the heap loses its water.",
            Action = $"Keep your hands off wet mains parts and switch the supply off first. Find and mend the leak, dry the switch, then clear the trip. {PullThePlug}",
            DelaySeconds = place.Persistence("leak"), RisesNow = place.Trips("leak"), ProtectsPeople = true,
        },
        new("level", "The tank is below its mark", High, AlarmGroup.Water, place.Interlock("level"))
        {
            Cause = "Water is lost from the loop: a leak, evaporation, a purge that has not been topped up.",
            Consequence = "The rig is stopped, so that the pump does not run dry. The house gets no heat from the water.",
            Action = "Top the loop up, look for the loss, then clear the trip. The water may be hot and is not for drinking.",
            DelaySeconds = place.Persistence("level"), RisesNow = place.Trips("level"), FollowsFrom = ["leak"],
        },
        new("pumpSilent", "The pump takes no power", High, AlarmGroup.Water, place.Interlock("pumpSilent"))
        {
            Cause = "A blown fuse, a relay that does not close, a loose wire, a dead pump.",
            Consequence = "The rig is stopped. The house gets no heat from the water, and the lines no frost guard.",
            Action = $"Look at fuse, relay, wiring and the pump; then clear the trip. {PullThePlug}",
            DelaySeconds = place.Persistence("pumpSilent"), RisesNow = place.Trips("pumpSilent"),
        },
        new("noFlow", "The pump runs and no water moves", High, AlarmGroup.Water, place.Interlock("noFlow"))
        {
            Cause = "A shut or jammed valve, air, ice, a blocked strainer, a pump that turns dry, or a dead flow meter.",
            Consequence = "The rig is stopped. The house gets no heat from the water, and the lines no frost guard.",
            Action = $"Open the valve, purge the air, look for ice and a blocked strainer, and that the pump turns; then clear the trip. {PullThePlug}",
            DelaySeconds = place.Persistence("noFlow"), RisesNow = place.Trips("noFlow"), FollowsFrom = [Sources.Rig, "leak", "level", "pumpSilent"],
        },
        new("pumpRunsOff", "The pump runs though it is told to stand", Medium, AlarmGroup.Water, (facts, _) =>
            facts.Before is not { PumpDuty: <= 0 } || facts.Value(Channel.PumpPower) is not { } watts ? null : watts > StandbyWatts)
        {
            Cause = "A relay that is welded shut, a switch set to hand, or a power meter that counts noise.",
            Consequence = "The heap is overdrawn and the battery emptied, whatever the controller decides.",
            Action = $"Pull the pump's plug, then look at its relay. {PullThePlug}",
            DelaySeconds = 5 * Minute, BridgeSeconds = 4 * Minute, ClearSeconds = 5 * Minute,
        },
        new("flowWhileOff", "Water moves though the pump stands", Low, AlarmGroup.Water, Syphon(place))
        {
            Cause = "A syphon (warm water rises by itself), a stuck relay, or a flow meter that counts noise.",
            Consequence = "Heat is drawn that nobody granted.",
            Action = "Shut the valve by hand and see whether it stops: then it is a syphon, and a non-return valve mends it. If it goes on, look at the meter's cable.",
            DelaySeconds = Math.Max(5 * Minute, place.Persistence("flowWhileOff")), ClearSeconds = 5 * Minute, FollowsFrom = ["pumpRunsOff"],
        },
        new("flowWeak", "Less water moves than the loop should give", Low, AlarmGroup.Water, Weak(place))
        {
            Cause = "A strainer that fills, air in a high place, a valve that does not open, ice that begins, a kinked hose.",
            Consequence = "Less heat comes for the same electricity; it may end in a blocked loop.",
            Action = $"Clean the strainer, purge the air, look at the valve. {PullThePlug}",
            DelaySeconds = 10 * Minute, BridgeSeconds = 2 * Minute, ClearSeconds = 10 * Minute,
            DeadBand = WeakDeadBand, Unit = "of what it should be", FollowsFrom = ["noFlow", "pumpSilent"],
            Detail = f => f.Before is { } told ? $"{f.Value(Channel.Flow):0.0} L/min with the pump at {100 * told.PumpDuty:0} % and the valve at {100 * told.ValveOpening:0} %" : null,
        },
        new("scald", "Water hot enough to scald", High, AlarmGroup.Water, place.Interlock("supplyHot"))
        {
            Cause = "The heap is hot and its water comes fast, or stood long in the turns.",
            Consequence = "Touching pipes or opening the loop burns at once. The water draw is held back.",
            Action = "Keep off the pipes and keep others off. Open nothing. It ends by itself when the water is cooler.",
            DelaySeconds = place.Persistence("supplyHot"), ClearSeconds = 10 * Minute, ProtectsPeople = true,
        },
        new("lineFreezes", "A water line is about to freeze", High, AlarmGroup.Water, Below(ColdestLine, LineFreezesC, 1))
        {
            Cause = "Frost at a line that is not buried or insulated enough, and water that does not move or is too cold to help.",
            Consequence = "The line bursts.",
            Action = "See that water moves. If it cannot, drain the line or warm it by hand-hot means; never by open flame. The water may still be hot at the heap.",
            DelaySeconds = 10 * Minute, ClearSeconds = 10 * Minute, DeadBand = 1, Unit = "K",
        },
    ];

    private const double WeakShare = 0.5;
    private const double WeakDeadBand = 0.1;

    // A pump that runs by its own curve for this share of its duty has left its start behind.
    private const double SettledDuty = 0.3;

    // While the pump runs it cannot be told, and what stood goes on standing.
    private static AlarmSign Syphon(AlarmPlace place)
    {
        AlarmSign verdict = place.Interlock("flowWhileOff");
        return (facts, standing) => facts.Before is not { PumpDuty: <= 0 } ? null : verdict(facts, standing);
    }

    // Held against what the pump was told before the reading; a standing pump says nothing of the loop.
    private static AlarmSign Weak(AlarmPlace place) => (facts, standing) =>
    {
        if (facts.Before is not { PumpDuty: >= SettledDuty } outputs || facts.Value(Channel.Flow) is not { } flow)
        {
            return null;
        }

        double should = place.Control.Loop.FlowLitresPerMinute(outputs.PumpDuty, outputs.ValveOpening);
        return flow < should * (standing ? WeakShare + WeakDeadBand : WeakShare);
    };

    private static double? ColdestLine(AlarmFacts facts) => (facts.Value(Channel.Supply), facts.Value(Channel.Return)) switch
    {
        ({ } supply, { } back) => Math.Min(supply, back),
        var (supply, back) => supply ?? back,
    };
}
