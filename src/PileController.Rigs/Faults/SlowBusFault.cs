using PileController.Control;
using PileController.Control.Readings;

namespace PileController.Rigs.Faults;

/// <summary>
/// A probe bus that answers only every third tick, and then with what it measured the tick before: readings are
/// one, two, three ticks old, then one again.
/// </summary>
internal sealed class SlowBusFault
{
    private const int TicksHeld = 3;

    private RigReadings? _held;
    private Instant _heldAt;
    private int _shown;

    /// <summary>Forgets what an earlier fault held.</summary>
    public void Begin()
    {
        _held = null;
        _shown = 0;
    }

    /// <summary>Puts the old answers in the place of the temperatures.</summary>
    /// <param name="readings">The readings of this tick; changed.</param>
    /// <param name="previous">What the rig said the tick before, or null at the first.</param>
    /// <param name="previousAt">When that was.</param>
    /// <param name="at">Now.</param>
    public void Delay(Reading[] readings, RigReadings? previous, Instant previousAt, Instant at)
    {
        if (_held is null || _shown == TicksHeld)
        {
            _held = previous;
            _heldAt = previousAt;
            _shown = 0;
        }

        _shown++;
        for (int i = 0; i < readings.Length; i++)
        {
            if (ChannelKinds.IsThermometer((Channel)i) && readings[i].Quality != ReadingQuality.NotFitted)
            {
                readings[i] = Old((Channel)i, at);
            }
        }
    }

    private Reading Old(Channel channel, Instant at)
    {
        if (_held is null)
        {
            return new Reading(0, ReadingQuality.NoAnswer, 0);
        }

        Reading held = _held[channel];
        int age = held.AgeMilliseconds + (int)(at.MonotonicMilliseconds - _heldAt.MonotonicMilliseconds);
        return held.IsGood ? held with { Quality = ReadingQuality.Late, AgeMilliseconds = age } : held;
    }
}
