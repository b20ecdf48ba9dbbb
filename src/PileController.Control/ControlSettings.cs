using PileController.Control.Regulation;

namespace PileController.Control;

/// <summary>The rule that says how much is drawn. All but <see cref="Means"/> are baselines for comparison.</summary>
public enum DrawPolicy
{
    /// <summary>Draw what the house wants within what the heap can bear.</summary>
    Means = 0,

    /// <summary>A house thermostat with a dead-band cut-out on the probe at the turns.</summary>
    Cutout,

    /// <summary>A house thermostat.</summary>
    Thermostat,

    /// <summary>At night.</summary>
    Timer,

    /// <summary>All the time.</summary>
    Always,

    /// <summary>Never.</summary>
    None,
}

/// <summary>What the controller is told about the place and what it may do. Defaults are Alder Bank's.</summary>
public sealed record ControlSettings
{
    /// <summary>Length of a tick, s (1 to 60).</summary>
    public double TickSeconds { get; init; } = 10;

    /// <summary>The draw rule.</summary>
    public DrawPolicy Policy { get; init; }

    /// <summary>Active-zone temperature that may not be undercut, °C (35 to 60).</summary>
    public double HeapFloorC { get; init; } = 45;

    /// <summary>Temperature the heap must hold for 24 h to count as lit, °C (40 to 60).</summary>
    public double HeapLitC { get; init; } = 50;

    /// <summary>How far ahead the horizon looks, h (6 to 96).</summary>
    public double LookAheadHours { get; init; } = 48;

    /// <summary>Confidence with which the floor is to hold, 0.5 to 0.999.</summary>
    public double Confidence { get; init; } = 0.95;

    /// <summary>House temperature below which plants suffer, °C.</summary>
    public double HouseMinimumC { get; init; } = 5;

    /// <summary>House set point by day, °C.</summary>
    public double HouseDayC { get; init; } = 15;

    /// <summary>House set point by night, °C.</summary>
    public double HouseNightC { get; init; } = 10;

    /// <summary>Local hour at which the day begins, 0 to 24.</summary>
    public double DayBeginsHour { get; init; } = 7;

    /// <summary>Local hour at which the night begins, 0 to 24.</summary>
    public double NightBeginsHour { get; init; } = 18;

    /// <summary>Hours before the day begins at which the pre-warm starts, 0 to 6.</summary>
    public double PreWarmHours { get; init; } = 1;

    /// <summary>
    /// Heap temperature above which heat is given for comfort, not only against frost, K above the floor (0 to 20); more for a
    /// house that loses much for the size of its heap and after cold weeks, see <see cref="Means.SeasonReserve"/>.
    /// </summary>
    public double ComfortReserveKelvin { get; init; } = 4;

    /// <summary>The same in the coldest weeks of the year, K above the floor (0 to 25); see <see cref="Means.SeasonReserve"/>.</summary>
    public double MidwinterReserveKelvin { get; init; } = 18;

    /// <summary>Latitude of the holding, degrees north (-90 to 90): tells when its coldest weeks come.</summary>
    public double LatitudeDegrees { get; init; } = 45;

    /// <summary>Heat capacity of the heap, J/K, as told to the controller.</summary>
    public double HeapHeatCapacityJPerK { get; init; } = 2.6e7;

    /// <summary>Conductance from the bed at the turns to the water, W/K, as told.</summary>
    public double CoilWPerK { get; init; } = 80;

    /// <summary>Loss of the house to the outside, W/K, as told.</summary>
    public double HouseLossWPerK { get; init; } = 220;

    /// <summary>Least flow that still purges air and reads well, L/min.</summary>
    public double LeastFlowLitresPerMinute { get; init; } = 1;

    /// <summary>Most flow asked of the pump, L/min.</summary>
    public double MostFlowLitresPerMinute { get; init; } = 4;

    /// <summary>Duty below which a running pump is not asked to go where nothing is told of the loop.</summary>
    public const double UsualLeastDuty = 0.35;

    /// <summary>
    /// Duty from which the pump surely moves water through this loop, 0 to 1; 0 where <see cref="UsualLeastDuty"/> does. A loop
    /// that lifts its water needs it: below it the pump turns and nothing flows.
    /// </summary>
    public double MovingDuty { get; init; }

    /// <summary>How the pump's flow is set.</summary>
    public PumpDrive Drive { get; init; }

    /// <summary>Duty at which a pump runs whose flow a valve sets, 0.1 to 1.</summary>
    public double ThrottledDuty { get; init; } = 1;

    /// <summary>What the valve tells of where it stands.</summary>
    public ValveFeedback ValveFeedback { get; init; }

    /// <summary>
    /// Rest of the pump after which the valve is driven shut, h; 0 to leave it where it is. A heap that lies below the house
    /// wants it, for its warm water rises by itself. Not for a loop that drains back, unless its valve has a bleed round it: a shut
    /// one keeps the line above it full.
    /// </summary>
    public double ValveShutAfterHours { get; init; }

    /// <summary>How flow hangs on duty and opening, as the loop is built.</summary>
    public LoopCurve Loop { get; init; } = new();

    /// <summary>Least run of the pump, s.</summary>
    public double LeastRunSeconds { get; init; } = 300;

    /// <summary>
    /// Least run of a pump that knows full and off only, s (common practice, no source). All it gives comes in runs, and the
    /// shorter they may be, the more evenly.
    /// </summary>
    public double RelayLeastRunSeconds { get; init; } = 180;

    /// <summary>Least run of the pump as it is driven, s.</summary>
    public double PumpLeastRunSeconds => Drive == PumpDrive.OnOff ? RelayLeastRunSeconds : LeastRunSeconds;

    /// <summary>Least rest of the pump, s.</summary>
    public double LeastRestSeconds { get; init; } = 300;

    /// <summary>Time flow must be proven before heat counts as drawn, s.</summary>
    public double PrimeSeconds { get; init; } = 60;

    /// <summary>Fastest change of pump or blower duty, 1/s.</summary>
    public double DutySlewPerSecond { get; init; } = 0.02;

    /// <summary>Half-width of the error of the supply and return pair, K.</summary>
    public double PairErrorKelvin { get; init; } = 0.15;

    /// <summary>Half-width of the error of the flow meter, share of the reading.</summary>
    public double FlowErrorShare { get; init; } = 0.03;

    /// <summary>True when a blower is fitted.</summary>
    public bool BlowerFitted { get; init; } = true;

    /// <summary>Air moved at full blower duty, m³/s, as told.</summary>
    public double BlowerFullFlowM3PerS { get; init; } = 0.04;

    /// <summary>Electric power of the blower at full duty, W, as told.</summary>
    public double BlowerWatts { get; init; } = 18;

    /// <summary>Electric power of the pump at full duty, W, as told.</summary>
    public double PumpWatts { get; init; } = 22;

    /// <summary>True when backup heat is fitted.</summary>
    public bool BackupFitted { get; init; }

    /// <summary>Cut-out baseline: water draw stops below this at the turns, °C.</summary>
    public double CutoutOffC { get; init; } = 45;

    /// <summary>Cut-out baseline: water draw may begin again above this at the turns, °C.</summary>
    public double CutoutOnC { get; init; } = 47;

    /// <summary>Where the heap's probes sit.</summary>
    public HeapProbePlaces Places { get; init; } = new();

    /// <summary>Limits of the interlocks.</summary>
    public InterlockLimits Limits { get; init; } = new();

    /// <summary>What is told of the house besides its loss, as reckoned from house and loop as built.</summary>
    public HouseTold House { get; init; } = new();

    /// <summary>Height of the heap, m, as built.</summary>
    public double HeapHeightM { get; init; } = 2.0;

    /// <summary>Water in the buried drum, L, as built; 0 for none.</summary>
    public double DrumLitres { get; init; } = 208.2;

    /// <summary>Distance of the coil's turns from the axis, m, as built.</summary>
    public double CoilRadiusM { get; init; } = 1.0;

    /// <summary>Distance of the ducts from the axis, m, as built.</summary>
    public double DuctRadiusM { get; init; } = 0.6;

    /// <summary>Conductance from the bed to the air of the closed duct, W/K; 0 without one or where the air runs through the heap.</summary>
    public double DuctWPerK { get; init; } = 14.2;
}

/// <summary>Where the heap's probes sit, as distances from its axis, and how wide the heap is, m.</summary>
public sealed record HeapProbePlaces
{
    /// <summary>Probe at the core, m.</summary>
    public double CoreM { get; init; } = 0.45;

    /// <summary>Probe half way to the turns, m.</summary>
    public double MiddleM { get; init; } = 0.75;

    /// <summary>Probe at the turns, m.</summary>
    public double TurnsM { get; init; } = 1.0;

    /// <summary>Probe near the outer face, m.</summary>
    public double EdgeM { get; init; } = 1.6;

    /// <summary>Radius of the heap, m.</summary>
    public double RadiusM { get; init; } = 1.9;
}

/// <summary>Limits of the interlocks.</summary>
public sealed record InterlockLimits
{
    /// <summary>Line water below which frost is guarded against, °C.</summary>
    public double LineFrostC { get; init; } = 2.5;

    /// <summary>Heap temperature of the fire watch, °C.</summary>
    public double HeapFireC { get; init; } = 80;

    /// <summary>Supply to the house above which water is held back (scald), °C.</summary>
    public double SupplyMostC { get; init; } = 75;

    /// <summary>House air above which all draw is held back, °C.</summary>
    public double HouseMostC { get; init; } = 32;

    /// <summary>Battery voltage below which the blower is held off, V.</summary>
    public double BatteryLowV { get; init; } = 11.6;

    /// <summary>Battery voltage below which all but frost guard is held off, V.</summary>
    public double BatteryEmptyV { get; init; } = 11.2;

    /// <summary>
    /// Carbon dioxide in the house above which the blower is held off, ppm. 5,000 ppm is the limit for eight hours at a
    /// workplace (OSHA, 29 CFR 1910.1000, Table Z-1).
    /// </summary>
    public double CarbonDioxidePpm { get; init; } = 5000;

    /// <summary>Flow that counts as none, L/min.</summary>
    public double NoFlowLitresPerMinute { get; init; } = 0.4;

    /// <summary>
    /// Time without flow after which a running pump is stopped, s, counted from the last reading that showed flow. Amid two
    /// ticks of 10 s, so that two readings without flow stop the pump however early or late the second comes.
    /// </summary>
    public double NoFlowSeconds { get; init; } = 15;

    /// <summary>
    /// Time a pump that was just started has to bring water, and time neither flow nor the pump's power may be readable, or the
    /// valve is told to be shut, before a running pump is stopped for want of flow, s. A line that has drained back is filled within it (common practice, no source).
    /// </summary>
    public double NoFlowGraceSeconds { get; init; } = 60;
}
