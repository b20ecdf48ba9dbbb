using PileController.Control;
using PileController.Physics.Heaps;
using PileController.Physics.Houses;
using PileController.Physics.Hydraulics;
using PileController.Rigs;
using PileController.Units;

namespace PileController.Settings;

/// <summary>All settings of one holding. Immutable. Defaults are those of the demo holding, Alder Bank.</summary>
public sealed record PileSettings
{
    /// <summary>The settings used when there is no file.</summary>
    public static PileSettings AlderBank { get; } = new();

    /// <summary>Where the holding is.</summary>
    public Site Site { get; init; } = new();

    /// <summary>Units people are shown.</summary>
    public UnitSystem Units { get; init; }

    /// <summary>The heap as built, coil, drum and ducts included.</summary>
    public HeapBuild Heap { get; init; } = new();

    /// <summary>The greenhouse as built.</summary>
    public HouseBuild House { get; init; } = new();

    /// <summary>The water circuit.</summary>
    public LoopBuild Loop { get; init; } = new();

    /// <summary>Battery and solar panel.</summary>
    public PowerBuild Power { get; init; } = new();

    /// <summary>What the controller is told and may do, interlock limits included.</summary>
    public ControlSettings Control { get; init; } = new();

    /// <summary>Probes, faults and where the devices are.</summary>
    public RigSettings Rig { get; init; } = new();

    /// <summary>How long the record is kept.</summary>
    public RecordSettings Record { get; init; } = new();

    /// <summary>The page.</summary>
    public PanelSettings Panel { get; init; } = new();

    /// <summary>Where a forecast of the weather comes from.</summary>
    public ForecastSettings Forecast { get; init; } = new();

    /// <summary>Who is told of alarms.</summary>
    public AlarmsSettings Alarms { get; init; } = new();

    /// <summary>What a plan of the season ahead is told.</summary>
    public PlanSettings Plan { get; init; } = new();

    /// <summary>The effective settings as one line of JSON: every field, in the order of the table, in its own unit.</summary>
    public string CanonicalJson() => SettingsWriter.Write(this);

    /// <summary>
    /// A stable mark of the effective settings: SHA-256 of <see cref="CanonicalJson"/>, lower-case hex, without the keys that
    /// earlier builds did not know and that say no more than when left out.
    /// </summary>
    public string Fingerprint() => SettingsWriter.Fingerprint(this);

    /// <summary>
    /// The same of what the simulated plant is built of: it stays the same while only the controller is told something else.
    /// </summary>
    public string PlantFingerprint() => (this with
    {
        Units = AlderBank.Units,
        Control = AlderBank.Control,
        Record = AlderBank.Record,
        Panel = AlderBank.Panel,
        Forecast = AlderBank.Forecast,
        Plan = AlderBank.Plan,
    }).Fingerprint();
}
