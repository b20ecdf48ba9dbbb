using PileController.Physics.Hydraulics;
using PileController.Settings.Fields;
using static PileController.Settings.Kinds.Kind;

namespace PileController.Settings.Tables;

/// <summary>Section "power".</summary>
internal static class PowerFields
{
    public static readonly FieldTable<PowerBuild> Table = new()
    {
        { "battery", WattHours(0, 100_000), p => p.BatteryWattHours, (p, v) => p with { BatteryWattHours = v }, "Battery, 0 Wh for mains." },
        { "panel", Watts(0, 20_000), p => p.PanelWatts, (p, v) => p with { PanelWatts = v }, "Solar panel in full sun." },
        { "idle", Watts(0, 200), p => p.IdleWatts, (p, v) => p with { IdleWatts = v }, "Load of the controller itself." },
    };
}
