using PileController.Physics.Heaps;
using PileController.Physics.Hydraulics;

namespace PileController.Physics.Plants;

/// <summary>
/// The water circuit: coil, drum, line to the house, pipe in the house, tank, line back. Water runs through rows of
/// cells (implicit upwind: conserves heat, stable at any flow), which gives the transport delay. Water that
/// would freeze goes on cooling as a liquid: the frost guard is there so that it never comes to that.
/// </summary>
internal sealed class Loop
{
    private const double HeatJPerKgK = 4186;
    private const double KgPerL = 0.998;

    // Water that stands somewhere even in a loop without a tank (common practice, no source).
    private const double LeastTankLitres = 20;
    private const double MostTurnover = 0.5;
    private const int CoilCells = 4;
    private const int LineCells = 3;
    private const int HouseCells = 3;

    private readonly double[] _coilC;
    private readonly double[] _supplyC;
    private readonly double[] _houseC;
    private readonly double[] _returnC;
    private readonly double _coilJPerK;
    private readonly double _lineJPerK;
    private readonly double _houseJPerK;
    private readonly double _tankJPerK;
    private readonly double _lineWPerK;
    private readonly double _houseWPerK;
    private readonly double _tankWPerK;
    private readonly double _pipeWallKPerW;
    private double _tankC;
    private LoopLedger _ledger;

    public Loop(LoopBuild build, CoilBuild coil, LoopState state, LoopLedger ledger)
    {
        _coilC = Cells(state.CoilC, CoilCells, nameof(state.CoilC));
        _supplyC = Cells(state.SupplyC, LineCells, nameof(state.SupplyC));
        _houseC = Cells(state.HouseC, HouseCells, nameof(state.HouseC));
        _returnC = Cells(state.ReturnC, LineCells, nameof(state.ReturnC));
        _tankC = state.TankC;
        _ledger = ledger;
        _coilJPerK = Math.Max(0.1, Volume(coil.InnerDiameterM, coil.LengthM)) * KgPerL * HeatJPerKgK / CoilCells;
        _lineJPerK = Math.Max(0.1, Volume(build.LineInnerDiameterM, build.LineLengthM)) * KgPerL * HeatJPerKgK / LineCells;
        _houseJPerK = HousePipeJPerK(build) / HouseCells;
        _tankJPerK = TankJPerK(build);
        _lineWPerK = build.LineLengthM * build.LineLossWPerMK / LineCells;
        _houseWPerK = build.HousePipeM * build.HousePipeWPerMK / HouseCells;
        _tankWPerK = build.TankLossWPerK;
        _pipeWallKPerW = LoopCircuit.PipeWallKPerW(coil);
    }

    /// <summary>Heat capacity of the water in the house's pipe, J/K.</summary>
    public static double HousePipeJPerK(LoopBuild build) =>
        Math.Max(0.1, Volume(build.LineInnerDiameterM, build.HousePipeM)) * KgPerL * HeatJPerKgK;

    /// <summary>Heat capacity of the water in the tank, J/K.</summary>
    public static double TankJPerK(LoopBuild build) => Math.Max(LeastTankLitres, build.TankLitres) * KgPerL * HeatJPerKgK;

    public LoopLedger Ledger => _ledger;

    public double SupplyC => _supplyC[0];

    public double ReturnC => _returnC[LineCells - 1];

    public double TankC => _tankC;

    /// <summary>The coldest water in the lines that lie outside.</summary>
    public double ColdestLineC
    {
        get
        {
            double least = _supplyC[0];
            for (int i = 0; i < LineCells; i++)
            {
                least = Math.Min(least, Math.Min(_supplyC[i], _returnC[i]));
            }

            return least;
        }
    }

    public double StoredJ
    {
        get
        {
            double sum = _tankC * _tankJPerK;
            foreach (double t in _coilC)
            {
                sum += t * _coilJPerK;
            }

            foreach (double t in _houseC)
            {
                sum += t * _houseJPerK;
            }

            for (int i = 0; i < LineCells; i++)
            {
                sum += (_supplyC[i] + _returnC[i]) * _lineJPerK;
            }

            return sum;
        }
    }

    public static LoopState Filled(double celsius) => new(
        [.. Enumerable.Repeat(celsius, CoilCells)], [.. Enumerable.Repeat(celsius, LineCells)],
        [.. Enumerable.Repeat(celsius, HouseCells)], [.. Enumerable.Repeat(celsius, LineCells)], celsius);

    public LoopState Snapshot() => new([.. _coilC], [.. _supplyC], [.. _houseC], [.. _returnC], _tankC);

    /// <summary>One step. Tells what the water took from bed and drum and gave to the house, J.</summary>
    public (double CoilJ, double DrumJ, double HouseJ) Step(
        double seconds, double flowLitresPerMinute, Heap heap, double houseC, double roundLinesC)
    {
        // A pump that would turn the tank over within the step takes it in parts.
        double turnedOver = flowLitresPerMinute * KgPerL * HeatJPerKgK / 60 * seconds / _tankJPerK;
        int parts = 1 + (int)(turnedOver / MostTurnover);
        double drumC = heap.DrumC;
        double coilJ = 0;
        double drumJ = 0;
        double givenJ = 0;
        for (int i = 0; i < parts; i++)
        {
            (double fromCoil, double fromDrum, double given) =
                Part(seconds / parts, flowLitresPerMinute, heap, drumC, houseC, roundLinesC);
            drumC -= heap.HasDrum ? fromDrum / heap.DrumJPerK : 0;
            coilJ += fromCoil;
            drumJ += fromDrum;
            givenJ += given;
        }

        return (coilJ, drumJ, givenJ);
    }

    private (double CoilJ, double DrumJ, double HouseJ) Part(
        double seconds, double flowLitresPerMinute, Heap heap, double drumC, double houseC, double roundLinesC)
    {
        double carried = flowLitresPerMinute * KgPerL * HeatJPerKgK / 60 * seconds;
        double wall = heap.WallWPerK;
        double couple = wall > 0 ? seconds / ((1 / wall) + _pipeWallKPerW) / CoilCells : 0;
        double bed = heap.WallC;
        double coilJ = 0;
        double pipeJ = 0;

        // The tank hands on the water it holds at the start of the step; every other cell is found from the one before
        // it. So what leaves one cell is exactly what the next receives, all round the loop.
        double inflow = _tankC;
        double lineJ = Line(_returnC, ref inflow, seconds, carried, roundLinesC);
        for (int i = 0; i < CoilCells; i++)
        {
            double t = ((_coilJPerK * _coilC[i]) + (carried * inflow) + (couple * bed)) / (_coilJPerK + carried + couple);
            coilJ += couple * (bed - t);
            _coilC[i] = t;
            inflow = t;
        }

        double drumJ = 0;
        if (heap.HasDrum)
        {
            double t = ((heap.DrumJPerK * drumC) + (carried * inflow)) / (heap.DrumJPerK + carried);
            drumJ = carried * (t - inflow);
            inflow = t;
        }

        lineJ += Line(_supplyC, ref inflow, seconds, carried, roundLinesC);
        double give = seconds * _houseWPerK;
        for (int i = 0; i < HouseCells; i++)
        {
            double t = ((_houseJPerK * _houseC[i]) + (carried * inflow) + (give * houseC)) / (_houseJPerK + carried + give);
            pipeJ += give * (t - houseC);
            _houseC[i] = t;
            inflow = t;
        }

        double loss = seconds * _tankWPerK;
        double tank = (((_tankJPerK - carried) * _tankC) + (carried * inflow) + (loss * houseC)) / (_tankJPerK + loss);
        double tankJ = loss * (tank - houseC);
        _tankC = tank;

        _ledger.CoilJ += coilJ;
        _ledger.DrumJ += drumJ;
        _ledger.PipeJ += pipeJ;
        _ledger.TankJ += tankJ;
        _ledger.LineJ += lineJ;
        return (coilJ, drumJ, pipeJ + tankJ);
    }

    private static double Volume(double diameterM, double lengthM) => 0.25 * Math.PI * diameterM * diameterM * lengthM * 1000;

    private static double[] Cells(double[] stored, int cells, string name) => stored.Length == cells
        ? [.. stored]
        : throw new ArgumentException($"The stored loop has {stored.Length} cells of {name}; it takes {cells}.", name);

    private double Line(double[] cells, ref double inflow, double seconds, double carried, double roundLinesC)
    {
        double lose = seconds * _lineWPerK;
        double lostJ = 0;
        for (int i = 0; i < LineCells; i++)
        {
            double t = ((_lineJPerK * cells[i]) + (carried * inflow) + (lose * roundLinesC)) / (_lineJPerK + carried + lose);
            lostJ += lose * (t - roundLinesC);
            cells[i] = t;
            inflow = t;
        }

        return lostJ;
    }
}
