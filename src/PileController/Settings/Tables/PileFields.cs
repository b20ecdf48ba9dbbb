using PileController.Settings.Fields;
using PileController.Units;
using static PileController.Settings.Kinds.Kind;

namespace PileController.Settings.Tables;

/// <summary>The whole settings file: its sections.</summary>
internal static class PileFields
{
    public static readonly FieldTable<PileSettings> Table = new()
    {
        { "site", SiteFields.Table, s => s.Site, (s, v) => s with { Site = v }, "Where the holding is." },
        { "units", Word(("metric", UnitSystem.Metric), ("us", UnitSystem.Us)), s => s.Units, (s, v) => s with { Units = v }, "Units people are shown." },
        { "heap", HeapFields.Table, s => s.Heap, (s, v) => s with { Heap = v }, "The heap as it is built." },
        { "house", HouseFields.Table, s => s.House, (s, v) => s with { House = v }, "The greenhouse as it is built." },
        { "loop", LoopFields.Table, s => s.Loop, (s, v) => s with { Loop = v }, "The water circuit outside the heap." },
        { "air", AirFields.Table, s => s.Heap.Duct, (s, v) => s with { Heap = s.Heap with { Duct = v } }, "The blower and the way its air takes." },
        { "power", PowerFields.Table, s => s.Power, (s, v) => s with { Power = v }, "Battery and solar panel." },
        { "control", ControlFields.Table, s => s.Control, (s, v) => s with { Control = v }, "What the controller may do and what it is told." },
        { "interlocks", InterlockFields.Table, s => s.Control.Limits, (s, v) => s with { Control = s.Control with { Limits = v } }, "Limits at which the interlocks act." },
        { "rig", RigFields.Table, s => s.Rig, (s, v) => s with { Rig = v }, "Probes and actuators." },
        { "record", RecordFields.Table, s => s.Record, (s, v) => s with { Record = v }, "The record of ticks and decisions." },
        { "panel", PanelFields.Table, s => s.Panel, (s, v) => s with { Panel = v }, "The page." },
        { "forecast", ForecastFields.Table, s => s.Forecast, (s, v) => s with { Forecast = v }, "Where a forecast of the weather comes from." },
        { "alarms", AlarmFields.Table, s => s.Alarms, (s, v) => s with { Alarms = v }, "Who is told of alarms, and how." },
        { "plan", PlanFields.Table, s => s.Plan, (s, v) => s with { Plan = v }, "What a plan of the season ahead is told." },
    };
}
