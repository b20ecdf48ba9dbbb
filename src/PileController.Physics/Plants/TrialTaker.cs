using PileController.Physics.Fluids;
using PileController.Physics.Heaps;

namespace PileController.Physics.Plants;

/// <summary>
/// What coil, drum and ducts take from the heap in one step of a trial. The draw is found together with the cooling it
/// causes, so that a step of half an hour neither overshoots nor rings.
/// </summary>
internal sealed class TrialTaker(HeapBuild build, TrialDraw draw, Heap heap, double stepSeconds)
{
    private readonly double _wallKPerW = LoopCircuit.PipeWallKPerW(build.Coil);
    private readonly double _carriedWPerK = draw.FlowLitresPerMinute > 0
        ? Water.MassFlowKgPerS(draw.FlowLitresPerMinute, draw.ReturnC) * Water.SpecificHeatJPerKgK(draw.ReturnC)
        : 0;

    private readonly double _airWPerK = draw.Blows ? build.Duct.FullFlowM3PerS * DuctBed.AirJPerM3K : 0;
    private readonly double _ductWPerK = DuctBed.ConductanceWPerK(build.Duct);

    /// <summary>Takes a share of a full draw; tells how much air is drawn through the heap, m³/s.</summary>
    public double Take(double share)
    {
        (double coilJ, double drumJ) = TakeWater(share);
        heap.StepQuick(stepSeconds, coilJ, drumJ, TakeAir(share));
        return build.Duct.ThroughHeap && draw.Blows ? share * build.Duct.FullFlowM3PerS : 0;
    }

    // The pump runs for a share of the time, at its flow: what it then takes is that share of a full draw.
    private (double CoilJ, double DrumJ) TakeWater(double share)
    {
        double carried = share * _carriedWPerK;
        if (carried <= 0)
        {
            return (0, 0);
        }

        double coilW = 0;
        if (heap.WallWPerK > 0)
        {
            double conductance = 1 / ((1 / heap.WallWPerK) + _wallKPerW);
            double reach = carried * -Portable.ExpMinusOne(-conductance / _carriedWPerK);
            (double undrawnC, double kelvinPerWatt) = heap.WallAfter(stepSeconds);
            coilW = reach * (undrawnC - draw.ReturnC) / (1 + (reach * kelvinPerWatt));
        }

        double drumJ = 0;
        if (heap.HasDrum)
        {
            double inflowC = draw.ReturnC + (coilW / carried);
            double passing = carried * stepSeconds;
            double endC = ((heap.DrumJPerK * heap.DrumC) + (passing * inflowC)) / (heap.DrumJPerK + passing);
            drumJ = passing * (endC - inflowC);
        }

        // Water that comes back warmer than it would leave is not pumped.
        double coilJ = coilW * stepSeconds;
        return coilJ + drumJ > 0 ? (coilJ, drumJ) : (0, 0);
    }

    private double TakeAir(double share)
    {
        double carried = share * _airWPerK;
        if (carried <= 0 || _ductWPerK <= 0 || heap.DuctShellC <= draw.AirC)
        {
            return 0;
        }

        double taken = -Portable.ExpMinusOne(-_ductWPerK / _airWPerK);
        double given = taken * (heap.DuctShellC - draw.AirC) / (1 + (stepSeconds * carried * taken / heap.DuctShellJPerK));
        return stepSeconds * carried * given;
    }
}
