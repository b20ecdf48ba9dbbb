namespace PileController.Control.Regulation;

/// <summary>
/// Turns a water grant into pump duty. What is granted and not drawn is kept as a credit: it starts the pump, trims its
/// duty and stops it, so that the mean draw meets the grant even where the least flow takes more than is granted. The
/// credit is bounded, which is the anti-windup.
/// </summary>
internal static class PumpRegulator
{
    private const double StartDuty = 0.5;
    private const double StartCreditJ = 1.5e6;
    private const double StopCreditJ = -1.5e6;
    private const double MostCreditJ = 3e6;

    // With the house at its minimum nothing is waited for.
    private const double UrgentCreditJ = 0.1e6;

    // A credit is to be drawn within this time; the duty moves slowly against the loop's dead time of minutes.
    private const double CreditSeconds = 1200;
    private const double SmoothSeconds = 60;
    private const double DutyPerWattSecond = 1.0 / (4000 * 120.0);

    /// <summary>One tick. Returns the duty asked for, 0 when the pump is to stand.</summary>
    public static (double Duty, RegulatorMemory Memory) Step(
        ControlSettings settings, in RegulatorMemory memory, double grantWatts, bool urgent, double drawWatts,
        double flowLitresPerMinute, double seconds, long now)
    {
        bool running = memory.PumpDuty > 0;
        double smooth = memory.DrawWatts + (Math.Min(1, seconds / SmoothSeconds) * (drawWatts - memory.DrawWatts));
        double credit = grantWatts <= 0
            ? Math.Min(0, memory.WaterCreditJoules)
            : memory.WaterCreditJoules + (seconds * (grantWatts - Math.Max(0, drawWatts)));
        credit = Math.Clamp(credit, -MostCreditJ, MostCreditJ);
        RegulatorMemory next = memory with { DrawWatts = smooth, WaterCreditJoules = credit };
        double held = (now - memory.PumpSinceMilliseconds) * 0.001;
        if (!running)
        {
            bool start = grantWatts > 0 && credit >= (urgent ? UrgentCreditJ : StartCreditJ) && held >= settings.LeastRestSeconds;
            return (start ? Math.Max(StartDuty, settings.MovingDuty) : 0, next);
        }

        bool stop = (grantWatts <= 0 || credit <= StopCreditJ) && held >= settings.LeastRunSeconds;
        if (stop)
        {
            return (0, next);
        }

        double target = Math.Max(0, grantWatts + (credit / CreditSeconds));
        double duty = memory.PumpDuty + (seconds * DutyPerWattSecond * (target - smooth));
        if (flowLitresPerMinute > settings.MostFlowLitresPerMinute)
        {
            duty = Math.Min(duty, memory.PumpDuty - (0.002 * seconds));
        }
        else if (flowLitresPerMinute < settings.LeastFlowLitresPerMinute)
        {
            duty = Math.Max(duty, memory.PumpDuty + (0.002 * seconds));
        }

        double step = settings.DutySlewPerSecond * seconds;
        duty = Math.Clamp(duty, memory.PumpDuty - step, memory.PumpDuty + step);
        return (Math.Clamp(duty, Math.Max(ControlSettings.UsualLeastDuty, settings.MovingDuty), 1), next);
    }
}
