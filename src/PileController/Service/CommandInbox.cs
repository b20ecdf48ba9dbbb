using PileController.Control.Decisions;

namespace PileController.Service;

/// <summary>
/// Where commands wait for the next tick. Bounded: what comes faster than ticks can take it is turned away.
/// </summary>
/// <threadsafety>Safe for use by several threads; only the loop drains.</threadsafety>
/// <param name="firstSequence">Number of the first tick that will drain it.</param>
public sealed class CommandInbox(long firstSequence)
{
    /// <summary>Most commands that wait for one tick.</summary>
    public const int Capacity = 64;

    private readonly Lock _gate = new();
    private List<Command> _waiting = [];
    private long _nextSequence = firstSequence;

    /// <summary>Hands over a command.</summary>
    /// <param name="command">What is asked for.</param>
    /// <param name="sequence">The tick at which it takes effect.</param>
    /// <returns>False when too many wait already; the command is not taken.</returns>
    public bool TryPost(Command command, out long sequence)
    {
        lock (_gate)
        {
            sequence = _nextSequence;
            if (_waiting.Count >= Capacity)
            {
                return false;
            }

            _waiting.Add(command);
            return true;
        }
    }

    /// <summary>Takes all that wait, in order. What is posted from here on goes to the tick after.</summary>
    /// <param name="sequence">The tick that takes them.</param>
    internal List<Command> Drain(long sequence)
    {
        lock (_gate)
        {
            List<Command> taken = _waiting;
            _waiting = [];
            _nextSequence = sequence + 1;
            return taken;
        }
    }
}
