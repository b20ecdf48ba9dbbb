using System.Device.Gpio;

namespace PileController.Rigs.Hardware.Lines;

/// <summary>
/// Notices that pulses are not counted any more though they come: the level, looked at now and then, changes again and
/// again while the count stands still. A line that is still tells nothing: water at rest looks the same, and the count
/// of nought is then the truth that a stopped flow must show.
/// </summary>
internal sealed class PulseWatch
{
    // From one level to the other and back holds one counted edge for certain; twice that, lest a count that is only
    // late be taken for a lost one.
    private const int ChangesThatProve = 4;

    // Some five seconds: a wheel that turns shows both levels within them.
    private const int LooksThatAreStill = 20;

    private long _count;
    private PinValue? _level;
    private int _changes;
    private int _still;

    /// <summary>True when pulses come and are not counted.</summary>
    public bool IsDead => _changes >= ChangesThatProve;

    /// <summary>True when neither level nor count has changed for so long that the wheel stands still.</summary>
    public bool IsStill => _still >= LooksThatAreStill;

    /// <summary>Takes in one look.</summary>
    /// <param name="count">Pulses since the start.</param>
    /// <param name="level">The line's level.</param>
    /// <returns>True when pulses were counted since the look before.</returns>
    public bool See(long count, PinValue level)
    {
        bool counted = count != _count;
        bool changed = _level is { } before && before != level;
        _changes = counted ? 0 : changed ? _changes + 1 : _changes;
        _still = counted || changed ? 0 : _still + 1;
        _count = count;
        _level = level;
        return counted;
    }

    /// <summary>Begins anew, after the line was opened again.</summary>
    public void Reset()
    {
        _level = null;
        _changes = _still = 0;
    }
}
