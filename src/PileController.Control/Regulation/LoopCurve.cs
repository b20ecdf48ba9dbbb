using PileController.Physics.Hydraulics;

namespace PileController.Control.Regulation;

/// <summary>
/// How flow hangs on duty and valve opening in a loop as built: the head of the pump goes with the square of its duty, the
/// loop's loss with the square of the flow. What the loop is in truth the regulator learns as one factor on top.
/// Defaults are Alder Bank's.
/// </summary>
public sealed record LoopCurve
{
    // So little a valve cannot be set: one whose place is only reckoned might stand shut, and the pump run against it
    // (common practice, no source).
    /// <summary>Least opening that is asked of a throttling valve while the pump runs, 0 to 1.</summary>
    public const double LeastValveOpening = 0.1;

    private const double LeastFlow = 1e-6;

    /// <summary>Flow at full duty with the valve wide open, L/min (above 0).</summary>
    public double FullFlowLitresPerMinute { get; init; } = 3.05;

    /// <summary>Duty at which the pump just holds the lift of the loop and nothing flows, 0 to 1; 0 in a closed, full loop.</summary>
    public double StillDuty { get; init; }

    /// <summary>Loss of pump and loop together, as a loss coefficient on the speed in the loop's bore (above 0).</summary>
    public double LossK { get; init; } = 721;

    /// <summary>Time the valve takes from shut to open, s; 0 when there is none.</summary>
    public double ValveTravelSeconds { get; init; } = 30;

    /// <summary>Flow, L/min; 0 when the pump does not lift the water or the valve is shut.</summary>
    /// <param name="duty">Duty, 0 to 1.</param>
    /// <param name="opening">Opening of the valve, 0 to 1.</param>
    public double FlowLitresPerMinute(double duty, double opening)
    {
        double spare = (duty * duty) - (StillDuty * StillDuty);
        if (spare <= 0 || opening <= 0)
        {
            return 0;
        }

        double most = 1 - (StillDuty * StillDuty);
        double throttled = LossK / (LossK + Throttle.LossK(Math.Min(1, opening)));
        return FullFlowLitresPerMinute * Math.Sqrt(most > 0 ? spare / most * throttled : 0);
    }

    /// <summary>Duty that gives a flow with the valve wide open, 0 to 1.</summary>
    /// <param name="flowLitresPerMinute">Flow, L/min.</param>
    public double DutyFor(double flowLitresPerMinute)
    {
        double share = Math.Max(0, flowLitresPerMinute) / FullFlowLitresPerMinute;
        double still = StillDuty * StillDuty;
        return Math.Min(1, Math.Sqrt(still + (share * share * (1 - still))));
    }

    /// <summary>Opening that gives a flow at a duty, <see cref="LeastValveOpening"/> to 1.</summary>
    /// <param name="flowLitresPerMinute">Flow, L/min.</param>
    /// <param name="duty">Duty the pump runs at, 0 to 1.</param>
    public double OpeningFor(double flowLitresPerMinute, double duty)
    {
        double free = FlowLitresPerMinute(duty, 1) / Math.Max(LeastFlow, flowLitresPerMinute);
        if (free <= 1)
        {
            return 1;
        }

        return Math.Clamp(Throttle.OpenShare(LossK * ((free * free) - 1)), LeastValveOpening, 1);
    }
}
