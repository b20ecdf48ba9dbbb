namespace PileController.Control.Decisions;

/// <summary>What the controller believes of the heap, from probes and metered draw alone.</summary>
/// <param name="CoreCelsius">Temperature of the heap's core, °C.</param>
/// <param name="ActiveZoneCelsius">Mean temperature of the hottest half of the heap, °C.</param>
/// <param name="TurnsCelsius">Temperature of the bed that holds the turns, °C.</param>
/// <param name="UncertaintyKelvin">One standard deviation of the active-zone figure, K.</param>
/// <param name="GenerationWatts">Heat the microbes make less what the heap loses by itself, W.</param>
/// <param name="ReserveJoules">Heat stored above the floor, J; negative below it.</param>
/// <param name="TrendKelvinPerDay">Slope of the active zone, K a day.</param>
/// <param name="Lit">Whether the heap has lit (50 °C for 24 h).</param>
/// <param name="Trusted">False when too few probes are believable; control then falls back to a cautious rule.</param>
public readonly record struct HeapEstimate(
    double CoreCelsius, double ActiveZoneCelsius, double TurnsCelsius, double UncertaintyKelvin,
    double GenerationWatts, double ReserveJoules, double TrendKelvinPerDay, bool Lit, bool Trusted);

/// <summary>Heat taken now, as the rig's own meter has it.</summary>
/// <param name="WaterWatts">By the water, W.</param>
/// <param name="WaterErrorWatts">Half-width of the error band of that figure, W.</param>
/// <param name="AirWatts">By the air, W.</param>
/// <param name="FlowLitresPerMinute">Loop flow used for it, L/min.</param>
/// <param name="Inferred">True when a probe was missing and the figure is inferred.</param>
public readonly record struct MeteredDraw(
    double WaterWatts, double WaterErrorWatts, double AirWatts, double FlowLitresPerMinute, bool Inferred);

/// <summary>Running totals since the record began; they survive restarts.</summary>
/// <param name="WaterJoules">Heat by water, J.</param>
/// <param name="WaterErrorJoules">Error of that, J (bands added without cancelling).</param>
/// <param name="AirJoules">Heat by air, J.</param>
/// <param name="PumpJoules">Electricity of the pump, J.</param>
/// <param name="BlowerJoules">Electricity of the blower, J.</param>
/// <param name="Litres">Water moved, L.</param>
public readonly record struct Totals(
    double WaterJoules, double WaterErrorJoules, double AirJoules, double PumpJoules, double BlowerJoules, double Litres);

/// <summary>What one interlock said this tick.</summary>
public enum Verdict : byte
{
    /// <summary>Its limit is not passed.</summary>
    Clear = 0,

    /// <summary>Passed, not yet for long enough.</summary>
    Pending = 1,

    /// <summary>It acts now.</summary>
    Acting = 2,

    /// <summary>It tripped, and stays so until a person clears it.</summary>
    Latched = 3,

    /// <summary>Its probe cannot be believed and the interlock does not act on that.</summary>
    Blind = 4,
}

/// <summary>What makes a decision worth a line of its own in the record; several may hold at once.</summary>
[Flags]
public enum DecisionKinds
{
    /// <summary>A steady tick.</summary>
    Steady = 0,

    /// <summary>The mode changed.</summary>
    Mode = 1,

    /// <summary>The curb changed.</summary>
    Curb = 2,

    /// <summary>An interlock tripped.</summary>
    Trip = 4,

    /// <summary>A trip was cleared, or a clearing was refused.</summary>
    Clear = 8,

    /// <summary>Something was taken by hand, given back, or ended by itself.</summary>
    Hand = 16,

    /// <summary>A probe's quality changed.</summary>
    Probe = 32,

    /// <summary>A warning began or ended.</summary>
    Warning = 64,

    /// <summary>The controller started.</summary>
    Start = 128,

    /// <summary>The night ahead is likely to be too cold for the house.</summary>
    Tonight = 256,
}
