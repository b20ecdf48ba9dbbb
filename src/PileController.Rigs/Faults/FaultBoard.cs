using PileController.Control.Readings;

namespace PileController.Rigs.Faults;

/// <summary>The faults now put into a rig. At most one of a kind a channel; a second replaces the first.</summary>
/// <threadsafety>Safe from any thread: the list handed out is never changed afterwards.</threadsafety>
public sealed class FaultBoard
{
    private readonly Lock _gate = new();
    private volatile Fault[] _active = [];

    /// <summary>Makes a board with faults already in.</summary>
    /// <param name="faults">The faults; null for none.</param>
    /// <exception cref="ArgumentException">One of them makes no sense; the message says why.</exception>
    public FaultBoard(IEnumerable<Fault>? faults = null)
    {
        foreach (Fault fault in faults ?? [])
        {
            Add(fault);
        }
    }

    /// <summary>The faults now in, oldest first. A new list after each change, the same one between.</summary>
    public IReadOnlyList<Fault> Active => _active;

    /// <summary>Puts a fault in.</summary>
    /// <exception cref="ArgumentException">It makes no sense (see <see cref="FaultRules"/>); the message says why.</exception>
    public void Add(Fault fault)
    {
        if (FaultRules.Find(fault) is { } complaint)
        {
            throw new ArgumentException(complaint.Sentence, nameof(fault));
        }

        lock (_gate)
        {
            _active = [.. _active.Where(other => !IsAt(other, fault.Kind, fault.Channel)), fault];
        }
    }

    /// <summary>Takes a fault out.</summary>
    /// <returns>False when it was not in.</returns>
    public bool Remove(FaultKind kind, Channel? channel = null)
    {
        lock (_gate)
        {
            Fault[] left = [.. _active.Where(other => !IsAt(other, kind, channel))];
            bool removed = left.Length < _active.Length;
            if (removed)
            {
                _active = left;
            }

            return removed;
        }
    }

    /// <summary>Takes all faults out.</summary>
    public void Clear()
    {
        lock (_gate)
        {
            _active = [];
        }
    }

    private static bool IsAt(Fault fault, FaultKind kind, Channel? channel) => fault.Kind == kind && fault.Channel == channel;
}
