using PileController.Records.Storage;

namespace PileController.Records.Keeping;

/// <summary>Counts what was found damaged, each thing once.</summary>
/// <threadsafety>Whoever holds it guards it.</threadsafety>
internal sealed class DamageTally(TimeProvider time)
{
    // A damaged file asked for years names each of its blocks; what is beyond this is known to be much.
    private const int MostParts = 10_000;
    private readonly HashSet<string> _parts = [];
    private (string What, long At) _newestPart;
    private long _oldestPartAt;
    private IReadOnlyList<SetAsideFile> _aside = [];

    /// <summary>All of it, or null when nothing is damaged.</summary>
    public RecordDamage? Damage { get; private set; }

    /// <summary>Notes a part that cannot be read. Told again it does not count again.</summary>
    public void Part(string what)
    {
        if (_parts.Count >= MostParts || !_parts.Add(what))
        {
            return;
        }

        _newestPart = (what, time.GetUtcNow().ToUnixTimeMilliseconds());
        _oldestPartAt = _parts.Count == 1 ? _newestPart.At : _oldestPartAt;
        Damage = Now();
    }

    /// <summary>Notes what lies in quarantine.</summary>
    public void Aside(IReadOnlyList<SetAsideFile> files)
    {
        _aside = [.. files.Where(file => !StoreEngine.IsLog(file.Name))];
        Damage = Now();
    }

    private RecordDamage? Now()
    {
        if (_aside.Count == 0)
        {
            return _parts.Count == 0 ? null : new RecordDamage(0, _parts.Count, _newestPart.What, _newestPart.At, _oldestPartAt);
        }

        SetAsideFile newest = _aside.MaxBy(file => file.UtcMilliseconds);
        long oldest = _aside.Min(file => file.UtcMilliseconds);
        return _parts.Count > 0 && _newestPart.At > newest.UtcMilliseconds
            ? new RecordDamage(_aside.Count, _parts.Count, _newestPart.What, _newestPart.At, Math.Min(oldest, _oldestPartAt))
            : new RecordDamage(
                _aside.Count, _parts.Count, newest.Name, newest.UtcMilliseconds,
                _parts.Count == 0 ? oldest : Math.Min(oldest, _oldestPartAt));
    }
}
