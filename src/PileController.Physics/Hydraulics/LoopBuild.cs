namespace PileController.Physics.Hydraulics;

/// <summary>The water circuit outside the heap: pump, lines, emitters in the house, overflow tank. Defaults are Alder Bank's.</summary>
public sealed record LoopBuild
{
    /// <summary>Length of each of the two lines between heap and house, m.</summary>
    public double LineLengthM { get; init; } = 12;

    /// <summary>Loss of a line to its surroundings, W/(m·K); about 0.3 for insulated pipe above ground, 0.12 insulated and buried.</summary>
    public double LineLossWPerMK { get; init; } = 0.12;

    /// <summary>
    /// How far the surroundings of the lines follow the air outside, 0 (as the deep ground) to 1 (in the open);
    /// about a half under a spade's depth of soil (common practice, no source).
    /// </summary>
    public double LineExposure { get; init; } = 0.5;

    /// <summary>Inside diameter of lines and house pipe, m.</summary>
    public double LineInnerDiameterM { get; init; } = 0.012065;

    /// <summary>Length of pipe in the house (bench or floor run), m.</summary>
    public double HousePipeM { get; init; } = 90;

    /// <summary>Heat given by the house pipe, W/(m·K).</summary>
    public double HousePipeWPerMK { get; init; } = 1.1;

    /// <summary>Water in the overflow tank, L (0 to 5000).</summary>
    public double TankLitres { get; init; } = 200;

    /// <summary>Loss of the tank to the house air, W/K.</summary>
    public double TankLossWPerK { get; init; } = 9;

    /// <summary>Static lift the pump must overcome, m (0 in a closed, full loop).</summary>
    public double StaticLiftM { get; init; }

    /// <summary>Pump head at no flow and full duty, m.</summary>
    public double PumpShutoffHeadM { get; init; } = 8;

    /// <summary>Pump flow at no head and full duty, L/min.</summary>
    public double PumpFreeFlowLitresPerMinute { get; init; } = 12;

    /// <summary>Electric power of the pump at full duty, W.</summary>
    public double PumpWatts { get; init; } = 22;

    /// <summary>Duty below which the pump does not turn, 0 to 1.</summary>
    public double PumpStartDuty { get; init; } = 0.15;

    /// <summary>Time the valve takes from shut to open, s; 0 when there is no valve.</summary>
    public double ValveTravelSeconds { get; init; } = 30;
}

/// <summary>Battery and solar panel that run pump and blower.</summary>
public sealed record PowerBuild
{
    /// <summary>Battery, Wh (0: mains).</summary>
    public double BatteryWattHours { get; init; } = 1200;

    /// <summary>Solar panel, W in full sun.</summary>
    public double PanelWatts { get; init; } = 200;

    /// <summary>Load of the controller itself, W.</summary>
    public double IdleWatts { get; init; } = 3;
}
