using PileController.Physics.Fluids;

namespace PileController.Physics.Hydraulics;

/// <summary>Where a pump's curve meets a circuit's.</summary>
/// <param name="FlowLitresPerMinute">Flow, L/min.</param>
/// <param name="HeadM">Head, m.</param>
/// <param name="Watts">Electric power, W.</param>
public readonly record struct OperatingPoint(double FlowLitresPerMinute, double HeadM, double Watts)
{
    /// <summary>Electric power per flow, W per L/min; infinity when nothing flows.</summary>
    public double WattsPerLitrePerMinute => FlowLitresPerMinute > 0 ? Watts / FlowLitresPerMinute : double.PositiveInfinity;

    /// <summary>Energy of running all day, Wh.</summary>
    public double WattHoursPerDay => 24 * Watts;

    /// <summary>The point at which a pump drives a chain of runs, found inside a bracket to 1e-9 L/min: no flow when the lift is too high.</summary>
    /// <param name="pump">The pump.</param>
    /// <param name="duty">Duty, 0 to 1.</param>
    /// <param name="runs">Runs of pipe, one after the other.</param>
    /// <param name="waterC">Water, °C, 0 to 95.</param>
    public static OperatingPoint Of(PumpCurve pump, double duty, IReadOnlyList<PipeRun> runs, double waterC)
    {
        double Spare(double flow) => pump.HeadM(flow, duty) - runs.Sum(run => run.HeadM(flow, waterC));
        double flow = Spare(0) <= 0 ? 0 : Bracket.Solve(Spare, 0, pump.FreeFlowLitresPerMinute * duty, 1e-9);
        return new OperatingPoint(flow, pump.HeadM(flow, duty), pump.Watts(duty));
    }

    /// <summary>
    /// The same with a valve closed in part: a sharp opening in the first run's bore (see <see cref="Throttle"/>).
    /// Shut, nothing flows and the pump gives its shut-off head.
    /// </summary>
    /// <param name="pump">The pump.</param>
    /// <param name="duty">Duty, 0 to 1.</param>
    /// <param name="runs">Runs of pipe, one after the other, one at least.</param>
    /// <param name="waterC">Water, °C, 0 to 95.</param>
    /// <param name="openShare">Open share of the valve's area, 0 to 1.</param>
    public static OperatingPoint Throttled(PumpCurve pump, double duty, IReadOnlyList<PipeRun> runs, double waterC, double openShare)
    {
        double valveK = Throttle.LossK(openShare);
        return double.IsPositiveInfinity(valveK)
            ? new OperatingPoint(0, pump.HeadM(0, duty), pump.Watts(duty))
            : Of(pump, duty, [.. runs, new PipeRun(0, runs[0].InnerDiameterM, valveK)], waterC);
    }

    /// <summary>Energy of running part of the day, Wh.</summary>
    /// <param name="hours">Hours a day, 0 to 24.</param>
    public double WattHours(double hours)
    {
        Require.Within(hours, 0, 24, "h");
        return hours * Watts;
    }

    /// <summary>Power the water itself takes up, W: the rest of the electric power is lost in motor and impeller.</summary>
    /// <param name="waterC">Water, °C, 0 to 95.</param>
    public double HydraulicWatts(double waterC) =>
        Flow.PressurePa(HeadM, Water.DensityKgPerM3(waterC)) * FlowLitresPerMinute / 60_000;
}
