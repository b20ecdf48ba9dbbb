using PileController.Physics.Heaps;
using PileController.Physics.Houses;
using PileController.Physics.Hydraulics;

namespace PileController.Physics.Plants;

/// <summary>The whole holding as it is built.</summary>
/// <param name="Heap">The heap.</param>
/// <param name="House">The greenhouse.</param>
/// <param name="Loop">The water circuit.</param>
/// <param name="Power">Battery and solar panel.</param>
public sealed record PlantBuild(HeapBuild Heap, HouseBuild House, LoopBuild Loop, PowerBuild Power);

/// <summary>What the actuators truly do during a step.</summary>
/// <param name="PumpDuty">0 to 1.</param>
/// <param name="ValveOpening">0 to 1.</param>
/// <param name="BlowerDuty">0 to 1.</param>
/// <param name="BackupOn">Whether backup heat runs.</param>
/// <param name="FlowShareLost">Share of the flow that a blockage takes, 0 to 1.</param>
public readonly record struct PlantInputs(
    double PumpDuty, double ValveOpening, double BlowerDuty, bool BackupOn, double FlowShareLost);

/// <summary>What moved in a step, as probes and meters see it.</summary>
/// <param name="FlowLitresPerMinute">Loop flow, L/min.</param>
/// <param name="PumpW">Electric power of the pump, W.</param>
/// <param name="BlowerW">Electric power of the blower, W.</param>
/// <param name="DuctAirC">Air leaving the ducts, °C.</param>
/// <param name="AirDrawW">Heat the air took from the heap, W.</param>
public readonly record struct PlantMotion(
    double FlowLitresPerMinute, double PumpW, double BlowerW, double DuctAirC, double AirDrawW);

/// <summary>All a plant remembers. Taken at a whole minute, so that a plant built from it goes on to the same bits.</summary>
public sealed record PlantState
{
    /// <summary>Wall time of the plant, ms since 1970-01-01T00:00Z.</summary>
    public required long UtcMilliseconds { get; init; }

    /// <summary>The heap.</summary>
    public required HeapState Heap { get; init; }

    /// <summary>The loop.</summary>
    public required LoopState Loop { get; init; }

    /// <summary>The loop's sums.</summary>
    public LoopLedger LoopLedger { get; init; }

    /// <summary>The house.</summary>
    public required DwellingState House { get; init; }

    /// <summary>The house's sums.</summary>
    public DwellingLedger HouseLedger { get; init; }

    /// <summary>What moved in the last step; null for a plant that has not lived yet.</summary>
    public PlantMotion? Motion { get; init; }

    /// <summary>Charge of the battery, 0 to 1.</summary>
    public double BatteryCharge { get; init; } = 1;

    /// <summary>Terminal voltage, V.</summary>
    public double BatteryVolts { get; init; } = 12.4;
}
