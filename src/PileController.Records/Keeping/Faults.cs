namespace PileController.Records.Keeping;

/// <summary>What of the record can fail and work again.</summary>
internal enum FaultSource
{
    /// <summary>Ticks cannot be made safe.</summary>
    Tail = 0,

    /// <summary>Ticks are safe in the tail, and cannot be moved on to the store.</summary>
    Store = 1,

    /// <summary>Ticks are in the store, and cannot be summed up or deleted when they are old.</summary>
    Days = 2,
}

/// <summary>What is wrong with the record: passing faults of the disk, and standing ones that stay until the next start.</summary>
/// <threadsafety>Written by the owner thread, read by any.</threadsafety>
internal sealed class Faults
{
    // More standing faults than a person reads; the rest is counted.
    private const int MostStanding = 8;
    private readonly Lock _gate = new();
    private readonly List<string> _standing = [];
    private int _unnamed;
    private readonly string?[] _passing = new string?[3];

    /// <summary>True while ticks cannot be made safe.</summary>
    public bool IsFailing { get; private set; }

    /// <summary>All of it in sentences, or null.</summary>
    public string? Text { get; private set; }

    /// <summary>Notes a fault that stays.</summary>
    public void Stand(string sentence)
    {
        lock (_gate)
        {
            if (_standing.Contains(sentence))
            {
                return;
            }

            if (_standing.Count < MostStanding)
            {
                _standing.Add(sentence);
            }
            else
            {
                _unnamed++;
            }

            Tell_NeedsLock();
        }
    }

    /// <summary>Notes that something fails now.</summary>
    public void Now(FaultSource source, string reason) => Set(source, source switch
    {
        FaultSource.Tail => $"The record cannot be written: {reason}",
        FaultSource.Store => $"Ticks are safe in the tail and cannot be moved to the store: {reason}",
        _ => $"Ticks are in the store and cannot be summed up: {reason}",
    });

    /// <summary>Notes that it works again.</summary>
    public void Over(FaultSource source) => Set(source, null);

    private void Set(FaultSource source, string? sentence)
    {
        lock (_gate)
        {
            _passing[(int)source] = sentence;
            IsFailing = _passing[(int)FaultSource.Tail] is not null;
            Tell_NeedsLock();
        }
    }

    private void Tell_NeedsLock()
    {
        List<string> all = [.. _passing.OfType<string>(), .. _standing];
        if (_unnamed > 0)
        {
            all.Add($"And {_unnamed} more.");
        }

        Text = all.Count == 0 ? null : string.Join(" ", all);
    }
}
