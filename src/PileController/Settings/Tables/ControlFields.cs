using PileController.Control;
using PileController.Control.Regulation;
using PileController.Settings.Fields;
using static PileController.Settings.Kinds.Kind;

namespace PileController.Settings.Tables;

/// <summary>Section "control" with "house", "pump", "errors", "cutout" and "told"; all of one record, parted for the reader.</summary>
internal static class ControlFields
{
    private static readonly FieldTable<ControlSettings> House = new()
    {
        { "minimum", Celsius(-10, 30), c => c.HouseMinimumC, (c, v) => c with { HouseMinimumC = v }, "House temperature below which plants suffer." },
        { "day", Celsius(-5, 35), c => c.HouseDayC, (c, v) => c with { HouseDayC = v }, "Set point by day." },
        { "night", Celsius(-5, 35), c => c.HouseNightC, (c, v) => c with { HouseNightC = v }, "Set point by night." },
        { "dayBegins", TimeOfDay, c => c.DayBeginsHour, (c, v) => c with { DayBeginsHour = v }, "Local time at which the day begins." },
        { "nightBegins", TimeOfDay, c => c.NightBeginsHour, (c, v) => c with { NightBeginsHour = v }, "Local time at which the night begins." },
        { "preWarm", Hours(0, 6), c => c.PreWarmHours, (c, v) => c with { PreWarmHours = v }, "Time before the day begins at which the pre-warm starts." },
    };

    private static readonly FieldTable<ControlSettings> Pump = new()
    {
        { "drive", WordOf<PumpDrive>(), c => c.Drive, (c, v) => c with { Drive = v }, "How the pump's flow is set: by its duty, by a relay that knows full and off only, or by the opening of the motor valve." },
        { "leastFlow", LitresPerMinute(0.1, 60), c => c.LeastFlowLitresPerMinute, (c, v) => c with { LeastFlowLitresPerMinute = v }, "Least flow that still purges air and reads well." },
        { "mostFlow", LitresPerMinute(0.2, 60), c => c.MostFlowLitresPerMinute, (c, v) => c with { MostFlowLitresPerMinute = v }, "Most flow asked of the pump." },
        { "leastRun", Seconds(0, 7200), c => c.LeastRunSeconds, (c, v) => c with { LeastRunSeconds = v }, "Least run of the pump." },
        { "relayLeastRun", Seconds(0, 7200), c => c.RelayLeastRunSeconds, (c, v) => c with { RelayLeastRunSeconds = v }, "Least run of a pump that knows full and off only." },
        { "leastRest", Seconds(0, 7200), c => c.LeastRestSeconds, (c, v) => c with { LeastRestSeconds = v }, "Least rest of the pump." },
        { "prime", Seconds(0, 1800), c => c.PrimeSeconds, (c, v) => c with { PrimeSeconds = v }, "Time flow must be proven before heat counts as drawn." },
        { "dutySlew", PerSecond(0.001, 1), c => c.DutySlewPerSecond, (c, v) => c with { DutySlewPerSecond = v }, "Fastest change of pump or blower duty." },
    };

    private static readonly FieldTable<ControlSettings> Valve = new()
    {
        { "feedback", WordOf<ValveFeedback>(), c => c.ValveFeedback, (c, v) => c with { ValveFeedback = v }, "What the motor valve tells of where it stands; \"none\": its place is reckoned from the time it travelled, and it is driven against a stop once a day." },
        { "throttledDuty", Share(0.1, 1), c => c.ThrottledDuty, (c, v) => c with { ThrottledDuty = v }, "Duty at which a pump runs whose flow the valve sets." },
        { "shutAfter", Hours(0, 48), c => c.ValveShutAfterHours, (c, v) => c with { ValveShutAfterHours = v }, "Rest of the pump after which the valve is driven shut, 0 h to leave it where it is; for a heap below the house; not in a loop that drains back, where a shut valve without a bleed keeps the line above it full." },
    };

    private static readonly FieldTable<ControlSettings> Errors = new()
    {
        { "pair", Kelvin(0.01, 2), c => c.PairErrorKelvin, (c, v) => c with { PairErrorKelvin = v }, "Half-width of the error of the supply and return pair." },
        { "flow", Share(0.001, 0.5), c => c.FlowErrorShare, (c, v) => c with { FlowErrorShare = v }, "Half-width of the error of the flow meter." },
    };

    private static readonly FieldTable<ControlSettings> Cutout = new()
    {
        { "off", Celsius(0, 70), c => c.CutoutOffC, (c, v) => c with { CutoutOffC = v }, "Water draw stops below this at the turns." },
        { "on", Celsius(0, 70), c => c.CutoutOnC, (c, v) => c with { CutoutOnC = v }, "Water draw may begin again above this at the turns." },
    };

    private static readonly FieldTable<ControlSettings> Told = new()
    {
        { "heapStore", JoulesPerKelvin(1e5, 1e9), c => c.HeapHeatCapacityJPerK, (c, v) => c with { HeapHeatCapacityJPerK = v }, "Heat capacity of the heap." },
        { "coil", WattsPerKelvin(0, 2000), c => c.CoilWPerK, (c, v) => c with { CoilWPerK = v }, "Conductance from the bed at the turns to the water." },
        { "houseLoss", WattsPerKelvin(1, 20_000), c => c.HouseLossWPerK, (c, v) => c with { HouseLossWPerK = v }, "Loss of the house to the outside." },
        { "blowerFitted", Flag, c => c.BlowerFitted, (c, v) => c with { BlowerFitted = v }, "Whether a blower is fitted." },
        { "blowerFullFlow", AirM3PerS(0, 2), c => c.BlowerFullFlowM3PerS, (c, v) => c with { BlowerFullFlowM3PerS = v }, "Air moved at full blower duty." },
        { "blowerPower", Watts(0, 2000), c => c.BlowerWatts, (c, v) => c with { BlowerWatts = v }, "Electric power of the blower at full duty." },
        { "pumpPower", Watts(1, 2000), c => c.PumpWatts, (c, v) => c with { PumpWatts = v }, "Electric power of the pump at full duty." },
        { "backupFitted", Flag, c => c.BackupFitted, (c, v) => c with { BackupFitted = v }, "Whether backup heat is fitted." },
    };

    public static readonly FieldTable<ControlSettings> Table = new()
    {
        { "policy", WordOf<DrawPolicy>(), c => c.Policy, (c, v) => c with { Policy = v }, "The draw rule; all but \"means\" are baselines for comparison." },
        { "tick", Seconds(1, 60), c => c.TickSeconds, (c, v) => c with { TickSeconds = v }, "Length of a tick." },
        { "floor", Celsius(35, 60), c => c.HeapFloorC, (c, v) => c with { HeapFloorC = v }, "Heap temperature that may not be undercut in the active zone." },
        { "lit", Celsius(40, 60), c => c.HeapLitC, (c, v) => c with { HeapLitC = v }, "Temperature the heap must hold for a day to count as lit." },
        { "comfortReserve", Kelvin(0, 20), c => c.ComfortReserveKelvin, (c, v) => c with { ComfortReserveKelvin = v }, "How far above its floor the heap must be before heat is given for comfort, not only against frost; more where the house loses much for the size of its heap, and when the last weeks were cold." },
        { "midwinterReserve", Kelvin(0, 25), c => c.MidwinterReserveKelvin, (c, v) => c with { MidwinterReserveKelvin = v }, "The same in the coldest weeks of the year, so that a cold spell finds a warm heap." },
        { "lookAhead", Hours(6, 96), c => c.LookAheadHours, (c, v) => c with { LookAheadHours = v }, "How far ahead it looks." },
        { "confidence", Share(0.5, 0.999), c => c.Confidence, (c, v) => c with { Confidence = v }, "Confidence with which the floor is to hold." },
        { "house", House, c => c, (_, v) => v, "What the house is to be." },
        { "pump", Pump, c => c, (_, v) => v, "What may be asked of the pump." },
        { "valve", Valve, c => c, (_, v) => v, "What may be asked of the motor valve." },
        { "errors", Errors, c => c, (_, v) => v, "How far the meters may err." },
        { "cutout", Cutout, c => c, (_, v) => v, "The two numbers of the cut-out baseline." },
        { "told", Told, c => c, (_, v) => v, "What the controller is told of heap, house and devices." },
    };
}
