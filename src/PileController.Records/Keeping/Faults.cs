using PileController.Records.Storage;

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
/// <param name="time">The clock that dates damage; null for the system's.</param>
/// <threadsafety>Written by the owner thread, read by any.</threadsafety>
internal sealed class Faults(TimeProvider? time = null)
{
    // More standing faults than a person reads; the rest is counted.
    private const int MostStanding = 8;
    private readonly Lock _gate = new();
    private readonly List<string> _standing = [];
    private readonly DamageTally _damage = new(time ?? TimeProvider.System);
    private int _unnamed;
    private readonly string?[] _passing = new string?[3];

    /// <summary>True while ticks cannot be made safe.</summary>
    public bool IsFailing { get; private set; }

    /// <summary>All of it in sentences, or null.</summary>
    public string? Text { get; private set; }

    /// <summary>What is damaged, or null.</summary>
    public RecordDamage? Damage
    {
        get
        {
            lock (_gate)
            {
                return _damage.Damage;
            }
        }
    }

    /// <summary>Notes a part of the record that cannot be read.</summary>
    public void Damaged(string sentence)
    {
        lock (_gate)
        {
            _damage.Part(sentence);
        }

        Stand(sentence);
    }

    /// <summary>Notes what lies in quarantine.</summary>
    public void Aside(IReadOnlyList<SetAsideFile> files)
    {
        lock (_gate)
        {
            _damage.Aside(files);
        }
    }

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
