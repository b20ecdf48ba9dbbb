namespace PileController.Control.Regulation;

/// <summary>
/// Turns an air grant into blower duty: what full duty would carry, as duct and house now have it, tells the duty that
/// carries the grant. Grants below what the least duty takes are dealt out in runs (<see cref="Allotment"/>).
/// </summary>
internal static class BlowerRegulator
{
    private const double LeastDuty = 0.3;
    private const double StartWatts = 150;

    // Comfort goes gently: from the first where the battery is short to the second where it is full. A hot autumn heap drawn on
    // by the ducts too burns less of its fuel and steams away less of its water before the cold comes (from seasons of the
    // simulated heap).
    private const double GentlestDuty = 0.35;
    private const double BriskestDuty = 0.5;

    // The probe in the duct lags by about this.
    private const double YieldSmoothSeconds = 60;

    /// <summary>Duty at which the blower runs for comfort, 0 to 1.</summary>
    /// <param name="briskness">How hard it may be driven, 0 to 1.</param>
    public static double GentleDuty(double briskness) => GentlestDuty + (briskness * (BriskestDuty - GentlestDuty));

    /// <summary>One tick. Returns the duty asked for, 0 when the blower is to stand.</summary>
    /// <param name="settings">Limits.</param>
    /// <param name="memory">What the tick before handed on.</param>
    /// <param name="grantWatts">Granted, W.</param>
    /// <param name="reachWatts">What the ducts could give at full duty, from the heap's own probes, W.</param>
    /// <param name="urgent">Whether the house stands at its minimum.</param>
    /// <param name="drawWatts">Draw by air, W.</param>
    /// <param name="seconds">Length of the tick, s.</param>
    /// <param name="now">Monotonic time, ms.</param>
    public static (double Duty, RegulatorMemory Memory) Step(
        ControlSettings settings, in RegulatorMemory memory, double grantWatts, double reachWatts, bool urgent, double drawWatts,
        double seconds, long now)
    {
        bool running = memory.BlowerDuty > 0;
        double carried = running ? Math.Max(0, drawWatts / memory.BlowerDuty) : 0;
        double before = memory.AirYieldWatts > 0 ? memory.AirYieldWatts : reachWatts;
        double yield = running ? before + (Math.Min(1, seconds / YieldSmoothSeconds) * (carried - before)) : reachWatts;
        double wish = yield > 0 ? grantWatts / yield : 0;
        RegulatorMemory next = memory with
        {
            AirCreditJoules = Allotment.Credit(memory.AirCreditJoules, grantWatts, drawWatts, running && wish >= 1, seconds),
            AirYieldWatts = yield,
        };
        bool inRuns = wish < LeastDuty;
        double held = (now - memory.BlowerSinceMilliseconds) * 0.001;
        if (!running)
        {
            bool worth = !inRuns || Allotment.Worth(
                next.AirCreditJoules, grantWatts, urgent, settings.LeastRunSeconds * LeastDuty * yield, Allotment.SpanSeconds);
            bool start = grantWatts >= StartWatts && reachWatts > 0 && worth && held >= settings.LeastRestSeconds
                && Allotment.MayStart(next.BlowerStarts, urgent);
            return (start ? LeastDuty : 0, next);
        }

        bool done = inRuns && Allotment.LeftJ(next.AirCreditJoules, grantWatts, urgent, next.BlowerStarts, Allotment.SpanSeconds) <= 0;
        if ((grantWatts <= 0 || done) && held >= settings.LeastRunSeconds)
        {
            return (0, next);
        }

        double step = settings.DutySlewPerSecond * seconds;
        return (Math.Clamp(Math.Clamp(wish, memory.BlowerDuty - step, memory.BlowerDuty + step), LeastDuty, 1), next);
    }
}
