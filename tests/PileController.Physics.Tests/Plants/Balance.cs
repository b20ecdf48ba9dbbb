using PileController.Physics.Heaps;
using PileController.Physics.Plants;

namespace PileController.Physics.Tests.Plants;

/// <summary>The change of a store against the sum of its fluxes, each with its sign.</summary>
internal sealed class Balance(double storedChange, IReadOnlyDictionary<string, double> fluxes)
{
    public IReadOnlyDictionary<string, double> Fluxes => fluxes;

    /// <summary>What does not add up; a flux can be left out by its name.</summary>
    public double Missing(string? without = null) =>
        Math.Abs(storedChange - fluxes.Where(flux => flux.Key != without).Sum(flux => flux.Value));

    /// <summary>What does not add up as a share of all that came in.</summary>
    public double Gap(string? without = null) => Missing(without) / fluxes.Values.Where(value => value > 0).Sum();

    public static Balance Heap(double beforeJ, Heap heap)
    {
        HeapLedger sums = heap.Ledger;
        return new Balance(heap.StoredJ - beforeJ, new Dictionary<string, double>
        {
            [nameof(sums.GeneratedJ)] = sums.GeneratedJ,
            [nameof(sums.AirInJ)] = sums.AirInJ,
            [nameof(sums.AirOutJ)] = -sums.AirOutJ,
            [nameof(sums.SideJ)] = -sums.SideJ,
            [nameof(sums.TopJ)] = -sums.TopJ,
            [nameof(sums.GroundJ)] = -sums.GroundJ,
            [nameof(sums.CoilJ)] = -sums.CoilJ,
            [nameof(sums.DrumJ)] = -sums.DrumJ,
            [nameof(sums.DuctJ)] = -sums.DuctJ,
            [nameof(sums.ThroughAirJ)] = -sums.ThroughAirJ,
        });
    }

    public static Balance Loop(double beforeJ, Plant plant)
    {
        LoopLedger sums = plant.LoopLedger;
        return new Balance(plant.LoopStoredJ - beforeJ, new Dictionary<string, double>
        {
            [nameof(sums.CoilJ)] = sums.CoilJ,
            [nameof(sums.DrumJ)] = sums.DrumJ,
            [nameof(sums.PipeJ)] = -sums.PipeJ,
            [nameof(sums.TankJ)] = -sums.TankJ,
            [nameof(sums.LineJ)] = -sums.LineJ,
        });
    }

    public static Balance House(double beforeJ, Plant plant)
    {
        DwellingLedger sums = plant.HouseLedger;
        return new Balance(plant.HouseStoredJ - beforeJ, new Dictionary<string, double>
        {
            [nameof(sums.SunJ)] = sums.SunJ,
            [nameof(sums.HeatJ)] = sums.HeatJ,
            [nameof(sums.LossJ)] = -sums.LossJ,
            [nameof(sums.VentJ)] = -sums.VentJ,
            [nameof(sums.GroundJ)] = -sums.GroundJ,
        });
    }

    public static Balance Water(double beforeKg, Heap heap)
    {
        HeapLedger sums = heap.Ledger;
        return new Balance(heap.WaterKg - beforeKg, new Dictionary<string, double>
        {
            [nameof(sums.WaterMadeKg)] = sums.WaterMadeKg,
            [nameof(sums.VapourInKg)] = sums.VapourInKg,
            [nameof(sums.VapourOutKg)] = -sums.VapourOutKg,
        });
    }
}
