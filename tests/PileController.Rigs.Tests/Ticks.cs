using PileController.Control;

namespace PileController.Rigs.Tests;

/// <summary>Moments for tests: ticks of ten seconds from a fixed winter night.</summary>
internal static class Ticks
{
    public const double Seconds = 10;

    public static Instant At(int tick) => AtSeconds(tick * Seconds);

    public static Instant AtSeconds(double seconds)
    {
        long milliseconds = (long)(seconds * 1000);
        return new Instant(1_327_000_000_000 + milliseconds, 5_000_000 + milliseconds, -300);
    }
}
