using System.Globalization;
using PileController.FarSide.Plants;

namespace PileController.FarSide;

/// <summary>What the plant comes to, as it truly is behind its probes: a line for the trial to read.</summary>
public static class PlantTold
{
    /// <summary>Names of what stands in a line.</summary>
    public const string Head = "sinceBootMs,outsideC,houseC,restingHouseC,activeZoneC,turnsC,supplyC,flowLitresPerMinute,valve,pumpStarts,waterDrawnKwh,airDrawnKwh";

    private const double JoulesPerKwh = 3.6e6;

    /// <summary>The plant now.</summary>
    /// <param name="far">The plant.</param>
    /// <param name="sinceBootMilliseconds">The moment, ms.</param>
    public static string Line(FarPlant far, long sinceBootMilliseconds)
    {
        Physics.Heaps.HeapLedger heap = far.Plant.Heap.Ledger;
        double water = (heap.CoilJ + heap.DrumJ) / JoulesPerKwh;
        double air = (heap.DuctJ + heap.ThroughAirJ) / JoulesPerKwh;
        return string.Create(
            CultureInfo.InvariantCulture,
            $"{sinceBootMilliseconds},{far.Plant.Sky.OutsideC:0.00},{far.Plant.HouseC:0.00},{far.Resting.HouseC:0.00},{far.Plant.Heap.ActiveZoneC:0.00},{far.Plant.Heap.NearTurnsC:0.00},{far.Plant.SupplyC:0.00},{far.Plant.FlowLitresPerMinute:0.00},{far.Valve.Opening:0.00},{far.PumpStarts},{water:0.0000},{air:0.0000}");
    }
}
