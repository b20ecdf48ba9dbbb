namespace PileController.Control.Regulation;

/// <summary>Turns an air grant into blower duty, with least run and rest times.</summary>
internal static class BlowerRegulator
{
    private const double LeastDuty = 0.3;
    private const double StartWatts = 150;

    public static double Step(
        ControlSettings settings, in RegulatorMemory memory, double grantWatts, double reachWatts, double seconds, long now)
    {
        bool running = memory.BlowerDuty > 0;
        double held = (now - memory.BlowerSinceMilliseconds) * 0.001;
        if (!running)
        {
            bool start = grantWatts >= StartWatts && reachWatts > 0 && held >= settings.LeastRestSeconds;
            return start ? LeastDuty : 0;
        }

        if (grantWatts <= 0 && held >= settings.LeastRunSeconds)
        {
            return 0;
        }

        double wish = reachWatts > 0 ? grantWatts / reachWatts : 0;
        double step = settings.DutySlewPerSecond * seconds;
        return Math.Clamp(Math.Clamp(wish, memory.BlowerDuty - step, memory.BlowerDuty + step), LeastDuty, 1);
    }
}
