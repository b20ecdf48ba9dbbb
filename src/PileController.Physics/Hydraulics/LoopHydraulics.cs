using PileController.Physics.Fluids;

namespace PileController.Physics.Hydraulics;

/// <summary>
/// A pump on a fixed chain of runs, made ready for a simulation that asks for the flow in every step. Since the friction
/// factor depends on flow over viscosity alone, one table serves all temperatures; the flow is then within 0.2 % of
/// <see cref="OperatingPoint.Of"/>. Pure: the same question always has the same answer, and no step remembers the last.
/// </summary>
public sealed class LoopHydraulics
{
    private const int MostSteps = 40;

    private readonly PumpCurve _pump;
    private readonly ResistanceTable _resistance;
    private readonly double _staticLiftM;
    private readonly double _headPerK;
    private readonly double _pumpSlope;

    /// <summary>Tabulates a circuit.</summary>
    /// <param name="pump">The pump.</param>
    /// <param name="runs">Runs of pipe, one after the other, one at least.</param>
    public LoopHydraulics(PumpCurve pump, IReadOnlyList<PipeRun> runs)
    {
        if (runs.Count == 0)
        {
            throw new ArgumentException("A loop needs one run of pipe at least.", nameof(runs));
        }

        _pump = pump;
        _resistance = new ResistanceTable(runs);
        _staticLiftM = runs.Sum(run => run.StaticLiftM);
        _headPerK = ResistanceTable.VelocityHeadM(runs[0].InnerDiameterM);
        _pumpSlope = pump.ShutoffHeadM / (pump.FreeFlowLitresPerMinute * pump.FreeFlowLitresPerMinute);
    }

    /// <summary>Flow, L/min; 0 when the pump stands, the lift is too high or the loop is shut.</summary>
    /// <param name="duty">Duty, 0 to 1.</param>
    /// <param name="waterC">Water, °C; taken as 0 or 95 beyond those, since only its viscosity counts here.</param>
    /// <param name="extraK">Loss coefficient of valve or blockage on the speed in the first run's bore (see <see cref="Throttle"/>), 0 to infinity.</param>
    public double FlowLitresPerMinute(double duty, double waterC, double extraK = 0)
    {
        Require.NotNegative(extraK, "(loss coefficient)");
        double running = _pump.RunningDuty(duty);
        double spareM = (_pump.ShutoffHeadM * running * running) - _staticLiftM;
        if (running == 0 || spareM <= 0 || double.IsPositiveInfinity(extraK))
        {
            return 0;
        }

        double liquidC = Math.Clamp(waterC, Water.LowestC, Water.HighestC);
        double viscosity = Water.ViscosityPaS(liquidC) / Water.DensityKgPerM3(liquidC);
        return Solve(spareM, _pumpSlope + (extraK * _headPerK), viscosity);
    }

    /// <summary>Electric power, W.</summary>
    /// <param name="duty">Duty, 0 to 1.</param>
    public double Watts(double duty) => _pump.Watts(duty);

    // Newton on spare − (slope + G(Q/ν))·Q² = 0, kept inside a shrinking bracket; the left side falls all the way.
    private double Solve(double spareM, double slope, double viscosity)
    {
        double low = 0;
        double high = Math.Sqrt(spareM / slope);
        double flow = 0.5 * high;
        for (int step = 0; step < MostSteps; step++)
        {
            double resistance = slope + _resistance.At(flow / viscosity, out double perRatio);
            double excess = (resistance * flow * flow) - spareM;
            if (excess > 0)
            {
                high = flow;
            }
            else
            {
                low = flow;
            }

            double next = flow - (excess / (flow * ((2 * resistance) + (flow * perRatio / viscosity))));
            if (!(next > low && next < high))
            {
                next = 0.5 * (low + high);
            }

            if (Math.Abs(next - flow) <= 1e-9 * high)
            {
                return next;
            }

            flow = next;
        }

        return flow;
    }
}
