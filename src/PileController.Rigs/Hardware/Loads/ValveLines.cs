using PileController.Rigs.Hardware.Ports;

namespace PileController.Rigs.Hardware.Loads;

/// <summary>
/// The two lines of a motor valve. Never both on: one is switched on only after the other was written off and, where it can be
/// read, reads off; and between the two directions the motor rests.
/// </summary>
/// <param name="open">The line that runs it open, off.</param>
/// <param name="shut">The line that runs it shut, off.</param>
/// <param name="deadSeconds">Least rest between the directions, s.</param>
internal sealed class ValveLines(IOutput open, IOutput shut, double deadSeconds)
{
    private int _last;
    private double? _stopped;
    private bool _isStuck;

    /// <summary>1 while it runs open, −1 while it runs shut, 0 at rest.</summary>
    public int Direction { get; private set; }

    /// <summary>Runs the valve, or stops it.</summary>
    /// <param name="direction">1 open, −1 shut, 0 stop.</param>
    /// <param name="seconds">Now, by a clock that is never set, s.</param>
    /// <param name="fault">What went wrong: then both lines were told to be off.</param>
    /// <returns>Time it has to rest before it can run that way, s; null when it does as told.</returns>
    public double? Turn(int direction, double seconds, out RigFaultException? fault)
    {
        // Nobody knows what was before the start: then too it rests first.
        _stopped ??= seconds;
        if (direction == 0 || direction != Direction)
        {
            fault = Stop(seconds);
            if (direction == 0 || fault is not null)
            {
                return null;
            }

            double rest = direction == _last ? 0 : _stopped.Value + deadSeconds - seconds;
            if (rest > 0)
            {
                return rest;
            }
        }

        (IOutput on, IOutput off) = direction > 0 ? (open, shut) : (shut, open);
        fault = Write(off, 0) ?? Write(on, 1);
        if (fault is not null)
        {
            Stop(seconds);
            return null;
        }

        Direction = _last = direction;
        return null;
    }

    /// <summary>Switches both lines off.</summary>
    /// <returns>What went wrong, or null; the other line is switched off all the same.</returns>
    public RigFaultException? Stop(double seconds)
    {
        RigFaultException? first = Write(open, 0);
        RigFaultException? second = Write(shut, 0);
        RigFaultException? fault = first ?? second;

        // A line that could not be switched off may have run the motor until now.
        if (Direction != 0 || _isStuck)
        {
            _stopped = seconds;
        }

        _isStuck = fault is not null;
        Direction = 0;
        return fault;
    }

    private static RigFaultException? Write(IOutput line, double share) =>
        Deed.Try(() => line.Write(share), "valve", line.Place, share > 0 ? "switched" : "switched off");
}
