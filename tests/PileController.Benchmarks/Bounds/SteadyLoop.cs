using PileController.Physics.Heaps;
using PileController.Physics.Hydraulics;
using PileController.Physics.Plants;

namespace PileController.Benchmarks.Bounds;

/// <summary>
/// The loop as if its water had run long enough: what the tank's water becomes on its way through line, coil, drum,
/// line and house pipe. At one flow every temperature on the way is linear in those round it.
/// </summary>
internal sealed class SteadyLoop
{
    private const double HeatWPerKPerLitreAMinute = 4186 * 0.998 / 60;
    private readonly double _lineWPerK;
    private readonly double _houseWPerK;
    private readonly double _pipeWallKPerW;
    private readonly bool _drum;

    public SteadyLoop(LoopBuild loop, HeapBuild heap)
    {
        _lineWPerK = loop.LineLengthM * loop.LineLossWPerMK;
        _houseWPerK = loop.HousePipeM * loop.HousePipeWPerMK;
        _pipeWallKPerW = LoopCircuit.PipeWallKPerW(heap.Coil);
        TankWPerK = loop.TankLossWPerK;
        TankJPerK = Math.Max(20, loop.TankLitres) * 0.998 * 4186;
        _drum = heap.DrumLitres > 0;
    }

    public double TankWPerK { get; }

    public double TankJPerK { get; }

    /// <summary>Shares the water keeps of what it came with through line, coil, line and house pipe.</summary>
    /// <param name="flowLitresPerMinute">Flow, L/min; above 0.</param>
    /// <param name="wallWPerK">Conductance from the bed at the pipe to the pipe, W/K.</param>
    public LoopShares At(double flowLitresPerMinute, double wallWPerK)
    {
        double carried = flowLitresPerMinute * HeatWPerKPerLitreAMinute;
        double coil = wallWPerK > 0 ? 1 / ((1 / wallWPerK) + _pipeWallKPerW) : 0;
        double line = Kept(carried, _lineWPerK, 3);
        return new LoopShares(carried, line, Kept(carried, coil, 4), Kept(carried, _houseWPerK, 3), _drum);
    }

    private static double Kept(double carried, double conductance, int cells)
    {
        double one = carried / (carried + (conductance / cells));
        return cells == 3 ? one * one * one : one * one * one * one;
    }
}

/// <summary>The loop at one flow: heat carried, W/K, and the share kept through each part.</summary>
internal readonly record struct LoopShares(double CarriedWPerK, double Line, double Coil, double House, bool Drum)
{
    /// <summary>What the water takes and gives, W: from the bed at the coil, from the drum, to the house, to the tank.</summary>
    public (double Coil, double Drum, double Pipe, double Tank) Flux(
        double wallC, double drumC, double tankC, double houseC, double groundC)
    {
        double inC = (Line * tankC) + ((1 - Line) * groundC);
        double coilC = (Coil * inC) + ((1 - Coil) * wallC);
        double outC = Drum ? drumC : coilC;
        double supplyC = (Line * outC) + ((1 - Line) * groundC);
        double backC = (House * supplyC) + ((1 - House) * houseC);
        return (CarriedWPerK * (coilC - inC), Drum ? CarriedWPerK * (outC - coilC) : 0, CarriedWPerK * (supplyC - backC),
            CarriedWPerK * (backC - tankC));
    }
}
