namespace PileController.Records.Keeping;

/// <summary>What is wrong with the record: one passing fault of the disk, and standing ones that stay until the next start.</summary>
/// <threadsafety>Written by the owner thread, read by any.</threadsafety>
internal sealed class Faults
{
    // More standing faults than a person reads; the rest is counted.
    private const int MostStanding = 8;
    private readonly Lock _gate = new();
    private readonly List<string> _standing = [];
    private int _unnamed;
    private string? _passing;

    /// <summary>True while the disk refuses to be written.</summary>
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

    /// <summary>Notes that writing fails now.</summary>
    public void Now(string reason)
    {
        lock (_gate)
        {
            _passing = $"The record cannot be written: {reason}";
            IsFailing = true;
            Tell_NeedsLock();
        }
    }

    /// <summary>Notes that writing works again.</summary>
    public void Over()
    {
        lock (_gate)
        {
            _passing = null;
            IsFailing = false;
            Tell_NeedsLock();
        }
    }

    private void Tell_NeedsLock()
    {
        List<string> all = [.. _passing is null ? [] : new[] { _passing }, .. _standing];
        if (_unnamed > 0)
        {
            all.Add($"And {_unnamed} more.");
        }

        Text = all.Count == 0 ? null : string.Join(" ", all);
    }
}
