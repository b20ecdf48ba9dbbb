using PileController.Service;

namespace PileController.Alarms;

/// <summary>How many alarms ask to be seen, and how bad it is.</summary>
/// <param name="Standing">Alarms that stand and are not shelved.</param>
/// <param name="Unseen">Alarms nobody has seen, those that ended meanwhile included.</param>
/// <param name="Worst">The highest priority among those listed, or null.</param>
/// <param name="HighStands">Whether one of high priority stands that is not shelved.</param>
public sealed record AlarmCount(int Standing, int Unseen, AlarmPriority? Worst, bool HighStands);

/// <summary>Where ticks, people and messages meet over the alarms.</summary>
/// <param name="table">The rows.</param>
/// <param name="start">The alarms as they were kept.</param>
/// <threadsafety>Safe for use by several threads.</threadsafety>
public sealed class AlarmDesk(AlarmTable table, AlarmState start)
{
    private readonly Lock _gate = new();
    private AlarmState _state = start;
    private AlarmCount _count = Counted(table, start);
    private string? _pushTrouble;

    /// <summary>Told of everything that happens, in order, on the thread that brings it about; must return at once.</summary>
    public event Action<IReadOnlyList<AlarmEvent>>? Happened;

    /// <summary>The rows.</summary>
    public AlarmTable Table => table;

    /// <summary>The alarms now.</summary>
    public AlarmState State => Volatile.Read(ref _state);

    /// <summary>What of them asks for a person.</summary>
    public AlarmCount Count => Volatile.Read(ref _count);

    /// <summary>Why messages have not gone out for an hour, or null; judged at the next tick.</summary>
    public string? PushTrouble
    {
        get => Volatile.Read(ref _pushTrouble);
        set => Volatile.Write(ref _pushTrouble, value);
    }

    /// <summary>Steps the alarms by a tick.</summary>
    public void Follow(FollowedTick tick) => Change(state => AlarmBoard.Step(table, state, AlarmFacts.Of(tick, PushTrouble)));

    /// <summary>A person has seen an alarm.</summary>
    public void See(int row, string who, long utcMilliseconds) =>
        Change(state => AlarmHands.See(table, state, row, who, utcMilliseconds));

    /// <summary>A person shelves an alarm; see <see cref="AlarmHands.Shelve"/>.</summary>
    public void Shelve(int row, double seconds, string who, long utcMilliseconds) =>
        Change(state => AlarmHands.Shelve(table, state, row, seconds, who, utcMilliseconds));

    /// <summary>A person takes an alarm off the shelf.</summary>
    public void Unshelve(int row, string who, long utcMilliseconds) =>
        Change(state => AlarmHands.Unshelve(table, state, row, who, utcMilliseconds));

    private void Change(Func<AlarmState, (AlarmState State, IReadOnlyList<AlarmEvent> Events)> change)
    {
        lock (_gate)
        {
            (AlarmState next, IReadOnlyList<AlarmEvent> events) = change(_state);
            Volatile.Write(ref _state, next);
            if (events.Count == 0)
            {
                return;
            }

            Volatile.Write(ref _count, Counted(table, next));
            Happened?.Invoke(events);
        }
    }

    private static AlarmCount Counted(AlarmTable table, AlarmState state)
    {
        (int standing, int unseen, bool high) = (0, 0, false);
        AlarmPriority? worst = null;
        for (int i = 0; i < table.Rows.Count; i++)
        {
            AlarmMemory memory = state.Rows[i];
            if (!memory.Listed)
            {
                continue;
            }

            AlarmPriority priority = table.Rows[i].Priority;
            bool stands = memory.Phase == AlarmPhase.Standing;
            standing += stands ? 1 : 0;
            unseen += memory.Unseen ? 1 : 0;
            high |= stands && priority == AlarmPriority.High;
            worst = worst is { } before && before >= priority ? before : priority;
        }

        return new AlarmCount(standing, unseen, worst, high);
    }
}
