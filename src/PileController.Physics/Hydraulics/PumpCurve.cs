namespace PileController.Physics.Hydraulics;

/// <summary>
/// A centrifugal pump: at full duty its head falls with the square of the flow, H = Hs·(1 − (Q/Qf)²); at part duty
/// flow goes with the duty, head with its square and power with its cube (the affinity laws).
/// </summary>
/// <param name="ShutoffHeadM">Head at no flow and full duty, m, above 0.</param>
/// <param name="FreeFlowLitresPerMinute">Flow at no head and full duty, L/min, above 0.</param>
/// <param name="FullWatts">Electric power at full duty, W, 0 or more.</param>
/// <param name="StartDuty">Duty below which the pump stands still, 0 to 1.</param>
public sealed record PumpCurve(double ShutoffHeadM, double FreeFlowLitresPerMinute, double FullWatts, double StartDuty = 0)
{
    /// <summary>Duty the impeller runs at: 0 below the start duty.</summary>
    /// <param name="duty">Duty asked for, 0 to 1.</param>
    public double RunningDuty(double duty)
    {
        Require.Within(duty, 0, 1, "(duty)");
        return duty < StartDuty ? 0 : duty;
    }

    /// <summary>Head at a flow, m; below 0 beyond the free flow of that duty.</summary>
    /// <param name="flowLitresPerMinute">Flow, L/min, 0 or more.</param>
    /// <param name="duty">Duty, 0 to 1.</param>
    public double HeadM(double flowLitresPerMinute, double duty)
    {
        double running = RunningDuty(duty);
        double share = flowLitresPerMinute / FreeFlowLitresPerMinute;
        return ShutoffHeadM * ((running * running) - (share * share));
    }

    /// <summary>Electric power, W, by the cube of the duty.</summary>
    /// <param name="duty">Duty, 0 to 1.</param>
    public double Watts(double duty)
    {
        double running = RunningDuty(duty);
        return FullWatts * running * running * running;
    }

    /// <summary>Flow against a circuit whose head is lift + c·Q², L/min, in closed form; 0 when the lift is too high.</summary>
    /// <param name="duty">Duty, 0 to 1.</param>
    /// <param name="headPerFlowSquared">c, m per (L/min)², 0 or more.</param>
    /// <param name="staticLiftM">Lift, m.</param>
    public double FlowAgainstQuadratic(double duty, double headPerFlowSquared, double staticLiftM = 0)
    {
        Require.NotNegative(headPerFlowSquared, "m/(L/min)²");
        double running = RunningDuty(duty);
        double spare = (ShutoffHeadM * running * running) - staticLiftM;
        double slope = headPerFlowSquared + (ShutoffHeadM / (FreeFlowLitresPerMinute * FreeFlowLitresPerMinute));
        return running > 0 && spare > 0 ? Math.Sqrt(spare / slope) : 0;
    }
}
