namespace PileController.Alarms.Push;

/// <summary>What of the messages does not go out, put together for the page.</summary>
/// <param name="desk">The alarms, which are told.</param>
/// <threadsafety>Safe for use by several threads.</threadsafety>
internal sealed class PushTroubles(AlarmDesk desk)
{
    private readonly Lock _gate = new();
    private readonly SortedDictionary<string, string> _each = new(StringComparer.Ordinal);

    /// <summary>Sets or ends what one sink has.</summary>
    public void Set(string name, string? why)
    {
        lock (_gate)
        {
            if (why is null)
            {
                _each.Remove(name);
            }
            else
            {
                _each[name] = why;
            }

            desk.PushTrouble = _each.Count == 0 ? null : string.Join(" ", _each.Values);
        }
    }
}
