using PileController.Commissioning.Sheets;
using PileController.Control;
using PileController.Control.Interlocks;
using PileController.Ledgers;
using PileController.Physics.Heaps;
using PileController.Plans.Ahead;
using PileController.Plans.Sketch;
using PileController.Rigs;
using PileController.Settings;
using PileController.Settings.Changes;

namespace PileController.Panel;

/// <summary>The units a page shows first; a person can change them on the page.</summary>
public enum PanelUnits
{
    /// <summary>°C, W, L/min, kWh, m.</summary>
    Metric = 0,

    /// <summary>°F, BTU/h, gal/min, BTU, ft.</summary>
    American,
}

/// <summary>What the panel is told of the place.</summary>
public sealed record PanelSetup
{
    /// <summary>Name of the holding.</summary>
    public string Holding { get; init; } = "Alder Bank";

    /// <summary>True: an invented holding with a simulated rig, and the page says so.</summary>
    public bool Demo { get; init; }

    /// <summary>How many times faster than life the clock runs; 1 but in the demo.</summary>
    public double Speed { get; init; } = 1;

    /// <summary>Local time minus UTC at a moment in UTC milliseconds, minutes (-840 to 840).</summary>
    public Func<long, int> OffsetMinutesAt { get; init; } = _ => 0;

    /// <summary>The zone's name in the time-zone data, by whose rules the page tells other moments; null where the offset never changes.</summary>
    public string? Zone { get; init; }

    /// <summary>The units shown first.</summary>
    public PanelUnits Units { get; init; }

    /// <summary>What control is told.</summary>
    public required ControlSettings Control { get; init; }

    /// <summary>The heap as built.</summary>
    public HeapBuild Heap { get; init; } = new();

    /// <summary>The rig; its probes are drawn where they sit.</summary>
    public RigSettings Rig { get; init; } = new();

    /// <summary>The interlocks, in the order of the verdicts.</summary>
    public IReadOnlyList<Interlock> Interlocks { get; init; } = InterlockTable.All;

    /// <summary>The simulated rig's faults, or null on a real rig.</summary>
    public IFaultSwitches? Faults { get; init; }

    /// <summary>All settings of the holding; the what-ifs of the plan start from them.</summary>
    public PileSettings Settings { get; init; } = PileSettings.AlderBank;

    /// <summary>File the alarms are kept in; null where they are not kept.</summary>
    public string? AlarmsFile { get; init; }

    /// <summary>The lamp or buzzer that fails on, or null.</summary>
    public IHeldLine? Lamp { get; init; }

    /// <summary>The grower's book; null where no folder is kept.</summary>
    internal LedgerDesk? Ledger { get; init; }

    /// <summary>The commissioning sheet; null where no folder is kept.</summary>
    internal SheetFile? Sheet { get; init; }

    /// <summary>The settings and the way to change them; null where they cannot be.</summary>
    internal SettingsDesk? Desk { get; init; }

    /// <summary>What control was told, by the hash of the settings; null where they are not kept.</summary>
    internal Func<string, ControlSettings?> ControlOf { get; init; } = _ => null;

    /// <summary>Sketches what a holding gives over a season, null for the plan's own sums. Takes up to a second; pure.</summary>
    internal Func<PileSettings, PlanSketch>? Sketch { get; init; }

    /// <summary>Runs one season of a run ahead. Takes seconds; pure.</summary>
    internal Func<AheadRequest, int, CancellationToken, SeasonOutcome> Season { get; init; } =
        (request, season, stop) => SeasonAhead.Run(request, season, PlanSteps.Planning, stop);

    /// <summary>Length of a tick in true time.</summary>
    public TimeSpan TrueTick => TimeSpan.FromSeconds(Control.TickSeconds / Speed);
}
