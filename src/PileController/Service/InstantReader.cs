using PileController.Control;

namespace PileController.Service;

/// <summary>Reads instants off a clock: wall time as a label, and a monotonic clock that goes on where the record left it.</summary>
internal sealed class InstantReader(TimeProvider clock, TickSettings settings)
{
    private readonly long _start = clock.GetTimestamp();

    /// <summary>Milliseconds on the monotonic clock now.</summary>
    public long MonotonicMilliseconds => settings.StartMonotonicMilliseconds + (long)clock.GetElapsedTime(_start).TotalMilliseconds;

    /// <summary>This moment.</summary>
    public Instant Now()
    {
        // The two clocks are read one after the other; a thread put aside between them would look like a jump of
        // the wall clock. Read again until both fall close together.
        long before = MonotonicMilliseconds;
        for (int attempt = 0; ; attempt++)
        {
            long utc = clock.GetUtcNow().ToUnixTimeMilliseconds();
            long after = MonotonicMilliseconds;
            if (after - before <= 5 || attempt == 4)
            {
                return new Instant(utc, after, settings.OffsetMinutesAt(utc));
            }

            before = after;
        }
    }
}
