using PileController.Control;
using PileController.Settings.Fields;
using static PileController.Settings.Kinds.Kind;

namespace PileController.Settings.Tables;

/// <summary>Section "interlocks".</summary>
internal static class InterlockFields
{
    public static readonly FieldTable<InterlockLimits> Table = new FieldTable<InterlockLimits>
    {
        { "lineFrost", Celsius(0.5, 10), l => l.LineFrostC, (l, v) => l with { LineFrostC = v }, "Line water below which frost is guarded against." },
        { "heapFire", Celsius(65, 90), l => l.HeapFireC, (l, v) => l with { HeapFireC = v }, "Heap temperature of the fire watch." },
        { "supplyMost", Celsius(30, 90), l => l.SupplyMostC, (l, v) => l with { SupplyMostC = v }, "Supply to the house above which water is held back (scald)." },
        { "houseMost", Celsius(15, 45), l => l.HouseMostC, (l, v) => l with { HouseMostC = v }, "House air above which all draw is held back." },
        { "batteryLow", Volts(5, 60), l => l.BatteryLowV, (l, v) => l with { BatteryLowV = v }, "Battery voltage below which the blower is held off." },
        { "batteryEmpty", Volts(5, 60), l => l.BatteryEmptyV, (l, v) => l with { BatteryEmptyV = v }, "Battery voltage below which all but frost guard is held off." },
        { "noFlow", LitresPerMinute(0.02, 10), l => l.NoFlowLitresPerMinute, (l, v) => l with { NoFlowLitresPerMinute = v }, "Flow that counts as none." },
        { "noFlowTime", Seconds(5, 600), l => l.NoFlowSeconds, (l, v) => l with { NoFlowSeconds = v }, "Time without flow after which a running pump is stopped, counted from the last reading that showed flow; two readings in any case." },
        { "noFlowGrace", Seconds(10, 600), l => l.NoFlowGraceSeconds, (l, v) => l with { NoFlowGraceSeconds = v }, "Time a pump just started has to bring water, and flow and pump power may be unreadable, or the valve be held shut, before it is stopped for want of flow." },
        { "carbonDioxide", PartsPerMillion(1000, 30_000), l => l.CarbonDioxidePpm, (l, v) => l with { CarbonDioxidePpm = v }, "Carbon dioxide in the house above which the blower is held off and people are warned, where it is measured; 5,000 ppm is the limit for a working day (OSHA, 29 CFR 1910.1000)." },
    }.LaterAre("carbonDioxide");
}
