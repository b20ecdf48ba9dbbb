namespace PileController.Control.Regulation;

/// <summary>
/// Turns a water grant into pump duty and valve opening. The heat balance is turned round: heat a litre carries, as supply
/// and return now have it, tells the flow that carries the grant; the loop's curve, corrected by what the meter counts,
/// tells duty or opening for that flow. Since the draw is metered at the heap and flow follows within a tick, the dead
/// time of the loop only moves the wish slowly. A slow integral, the credit, takes out what is left. Grants below what the
/// least flow takes, and all grants of a pump that knows full and off only, are dealt out in runs (<see cref="Allotment"/>).
/// </summary>
internal static class PumpRegulator
{
    private const double MostStartDuty = 0.5;

    // Noise of a probe pair is smoothed over this; a pocket's own lag is half of it.
    private const double YieldSmoothSeconds = 30;
    private const double FlowSmoothSeconds = 30;

    // The credit is worked off over this, and by no more than this share of the grant: a burst that a start brings is paid
    // back over hours, not by a dip.
    private const double CreditSeconds = 1200;
    private const double MostTrimShare = 0.015;

    // The learned factor stays where a sound loop could be; a blocked line is not chased with all the pump has.
    private const double LeastExcess = -0.8;
    private const double MostExcess = 2;

    // The duty moves no faster than the curve's factor is learned: where the flow in the pipe turns from laminar to turbulent
    // the curve is off by a tenth.
    private const double PacePerSecond = 0.003;

    // Comfort runs a pump that knows its duty at its least, and by so much faster where the battery is full. That takes nearly
    // three times the power and brings little more, since the bed round the pipe cools with it (from seasons of the simulated heap).
    private const double BriskDuty = 0.15;

    // A valve is not moved for less than this share of the flow.
    private const double ValveStillShare = 0.005;

    /// <summary>One tick. Duty 0 means that the pump is to stand; the opening is then the last.</summary>
    /// <param name="settings">Drive, limits and the loop's curve.</param>
    /// <param name="memory">What the tick before handed on.</param>
    /// <param name="grantWatts">Granted, W.</param>
    /// <param name="urgent">Whether the house stands at its minimum.</param>
    /// <param name="drawWatts">Metered draw, W.</param>
    /// <param name="flowLitresPerMinute">Flow, L/min.</param>
    /// <param name="flowMetered">False when the flow is itself inferred from the curve and nothing can be learned of it.</param>
    /// <param name="seconds">Length of the tick, s.</param>
    /// <param name="now">Monotonic time, ms.</param>
    public static (double Duty, double Opening, RegulatorMemory Memory) Step(
        ControlSettings settings, in RegulatorMemory memory, double grantWatts, bool urgent, double drawWatts,
        double flowLitresPerMinute, bool flowMetered, double seconds, long now)
    {
        bool running = memory.PumpDuty > 0;
        RegulatorMemory next = Learn(settings, memory, drawWatts, flowLitresPerMinute, flowMetered, seconds);
        double factor = 1 + next.FlowExcess;
        double full = settings.Loop.FlowLitresPerMinute(RunDuty(settings), 1) * factor;
        double most = settings.Drive == PumpDrive.OnOff ? full : Math.Min(full, settings.MostFlowLitresPerMinute);
        double least = Math.Min(most, LeastFlow(settings, factor));
        double trim = Math.Clamp(memory.WaterCreditJoules / CreditSeconds, -MostTrimShare * grantWatts, MostTrimShare * grantWatts);
        double wish = next.WaterYieldWatts > 0 ? (grantWatts + trim) / next.WaterYieldWatts : least;
        next = next with
        {
            WaterCreditJoules = Allotment.Credit(memory.WaterCreditJoules, grantWatts, drawWatts, running && wish >= most, seconds),
        };
        bool inRuns = wish < least;
        double span = Allotment.PumpSpanSeconds(settings.Drive);
        double held = (now - memory.PumpSinceMilliseconds) * 0.001;
        if (!running)
        {
            bool worth = !inRuns || urgent || Allotment.Worth(
                next.WaterCreditJoules, grantWatts, urgent, settings.PumpLeastRunSeconds * least * next.WaterYieldWatts, span);
            // Nothing starts in the first tick: how long the pump has rested is not known yet.
            if (!(grantWatts > 0 && seconds > 0 && worth && held >= settings.LeastRestSeconds && Allotment.MayStart(next.PumpStarts, urgent)))
            {
                return (0, memory.ValveOpening, next);
            }
        }
        else if (held >= Allotment.LeastRunSeconds(settings, memory.PumpStarts) && (grantWatts <= 0 || (inRuns && Done(settings, next, grantWatts, urgent, span))))
        {
            return (0, memory.ValveOpening, next);
        }

        // A valve whose reckoned place has drifted may stand shut: it is opened until water moves.
        bool stuck = running && flowMetered && flowLitresPerMinute < settings.Limits.NoFlowLitresPerMinute;
        double flow = stuck && settings.Drive == PumpDrive.Valve ? full : Math.Clamp(wish, least, most);
        (double duty, double opening) = Actuate(settings, memory, flow, factor, seconds);
        return (duty, opening, next);
    }

    /// <summary>Duty at which a pump runs that is not set by its duty, and the most of one that is, 0 to 1.</summary>
    public static double RunDuty(ControlSettings settings) =>
        settings.Drive == PumpDrive.Valve ? Math.Max(settings.ThrottledDuty, settings.MovingDuty) : 1;

    /// <summary>Least duty at which a pump runs, 0 to 1: full where it knows no other.</summary>
    public static double GentlestDuty(ControlSettings settings) =>
        settings.Drive == PumpDrive.Duty ? LeastDuty(settings) : RunDuty(settings);

    /// <summary>
    /// Heat the water carries at the flow that comfort is content with, W: what a litre carries now tells it, so that a draw that
    /// goes faster comes down to it and one that goes slower up. Infinite while the pump stands or knows no part of its power.
    /// </summary>
    /// <param name="settings">Drive, limits and the loop's curve.</param>
    /// <param name="memory">What a litre carries, as learned.</param>
    /// <param name="briskness">How hard the pump may be driven, 0 to 1.</param>
    public static double GentleWatts(ControlSettings settings, in RegulatorMemory memory, double briskness)
    {
        if (settings.Drive != PumpDrive.Duty || memory.PumpDuty <= 0 || memory.WaterYieldWatts <= 0)
        {
            return double.PositiveInfinity;
        }

        double duty = Math.Min(1, LeastDuty(settings) + (briskness * BriskDuty));
        double flow = settings.Loop.FlowLitresPerMinute(duty, 1) * (1 + memory.FlowExcess);
        return memory.WaterYieldWatts * Math.Max(settings.LeastFlowLitresPerMinute, flow);
    }

    private static double LeastDuty(ControlSettings settings) => Math.Max(ControlSettings.UsualLeastDuty, settings.MovingDuty);

    // A rest that would be shorter than the least is not begun: the run goes on into the next span.
    private static bool Done(ControlSettings settings, in RegulatorMemory memory, double grantWatts, bool urgent, double spanSeconds) =>
        Allotment.LeftJ(memory.WaterCreditJoules, grantWatts, urgent, memory.PumpStarts, spanSeconds) <= 0
        && (memory.PumpStarts >= 1 || memory.PumpStarts * spanSeconds >= settings.LeastRestSeconds);

    private static double LeastFlow(ControlSettings settings, double factor) => settings.Drive switch
    {
        PumpDrive.OnOff => settings.Loop.FlowLitresPerMinute(1, 1) * factor,
        PumpDrive.Valve => Math.Max(
            settings.LeastFlowLitresPerMinute,
            settings.Loop.FlowLitresPerMinute(RunDuty(settings), LoopCurve.LeastValveOpening) * factor),
        _ => Math.Max(settings.LeastFlowLitresPerMinute, settings.Loop.FlowLitresPerMinute(LeastDuty(settings), 1) * factor),
    };

    // Only what flows can tell what a litre carries and how far the curve is off.
    private static RegulatorMemory Learn(
        ControlSettings settings, in RegulatorMemory memory, double drawWatts, double flow, bool flowMetered, double seconds)
    {
        if (memory.PumpDuty <= 0 || flow < settings.Limits.NoFlowLitresPerMinute)
        {
            return memory;
        }

        double carried = Math.Max(0, drawWatts / flow);
        double before = memory.WaterYieldWatts > 0 ? memory.WaterYieldWatts : carried;
        double yield = before + (Math.Min(1, seconds / YieldSmoothSeconds) * (carried - before));
        double told = settings.Loop.FlowLitresPerMinute(memory.PumpDuty, settings.Drive == PumpDrive.Valve ? memory.ValveOpening : 1);
        double excess = flowMetered && told > 0
            ? memory.FlowExcess + (Math.Min(1, seconds / FlowSmoothSeconds) * ((flow / told) - 1 - memory.FlowExcess))
            : memory.FlowExcess;
        return memory with { WaterYieldWatts = yield, FlowExcess = Math.Clamp(excess, LeastExcess, MostExcess) };
    }

    private static (double Duty, double Opening) Actuate(
        ControlSettings settings, in RegulatorMemory memory, double flow, double factor, double seconds)
    {
        if (settings.Drive == PumpDrive.OnOff)
        {
            return (1, 1);
        }

        if (settings.Drive == PumpDrive.Valve)
        {
            return (RunDuty(settings), Opening(settings, memory, flow / factor, seconds));
        }

        double least = LeastDuty(settings);
        double duty = settings.Loop.DutyFor(flow / factor);
        if (memory.PumpDuty <= 0)
        {
            return (Math.Clamp(duty, least, Math.Max(least, MostStartDuty)), 1);
        }

        double step = Math.Min(settings.DutySlewPerSecond, PacePerSecond) * seconds;
        return (Math.Clamp(Math.Clamp(duty, memory.PumpDuty - step, memory.PumpDuty + step), least, 1), 1);
    }

    private static double Opening(ControlSettings settings, in RegulatorMemory memory, double flow, double seconds)
    {
        double duty = RunDuty(settings);
        double now = settings.Loop.FlowLitresPerMinute(duty, memory.ValveOpening);
        if (memory.ValveOpening >= LoopCurve.LeastValveOpening && Math.Abs(now - flow) <= ValveStillShare * flow)
        {
            return memory.ValveOpening;
        }

        double travel = settings.Loop.ValveTravelSeconds;
        double step = travel > 0 ? seconds / travel : 1;
        double opening = settings.Loop.OpeningFor(flow, duty);
        return Math.Clamp(opening, Math.Max(0, memory.ValveOpening - step), Math.Min(1, memory.ValveOpening + step));
    }
}
