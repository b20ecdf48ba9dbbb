namespace PileController.Alarms;

/// <summary>Gathers what happens in one tick. Costs nothing where nothing happens.</summary>
/// <param name="number">Number of the last event.</param>
/// <param name="utcMilliseconds">Wall time of the tick, ms since 1970-01-01T00:00Z.</param>
internal sealed class AlarmLog(long number, long utcMilliseconds)
{
    private List<AlarmEvent>? _events;

    /// <summary>Wall time of the tick, ms since 1970-01-01T00:00Z.</summary>
    public long UtcMilliseconds => utcMilliseconds;

    /// <summary>What happened, in order.</summary>
    public IReadOnlyList<AlarmEvent> Events => _events ?? (IReadOnlyList<AlarmEvent>)[];

    /// <summary>Adds an event.</summary>
    public void Add(AlarmEventKind kind, string key, AlarmMemory memory, bool quiet, string? who = null)
    {
        _events ??= [];
        _events.Add(new AlarmEvent(number + _events.Count + 1, kind, key, utcMilliseconds, memory.FirstUp, quiet, who, memory.Detail));
    }
}
