using PileController.Alarms;

namespace PileController.Panel.Alarms;

/// <summary>Puts the alarms into the form in which they go over the wire.</summary>
internal static class AlarmsReport
{
    private const int MostRecent = 100;

    /// <summary>All of them.</summary>
    /// <param name="table">The rows.</param>
    /// <param name="state">The alarms.</param>
    /// <param name="utcMilliseconds">Wall time at the state's last tick, ms since 1970-01-01T00:00Z.</param>
    public static AlarmsBody Of(AlarmTable table, AlarmState state, long utcMilliseconds)
    {
        List<(AlarmRow Row, AlarmMemory Memory)> listed = [];
        List<(AlarmRow Row, AlarmMemory Memory)> shelved = [];
        for (int i = 0; i < table.Rows.Count; i++)
        {
            AlarmMemory memory = state.Rows[i];
            if (memory.Shelved)
            {
                shelved.Add((table.Rows[i], memory));
            }
            else if (memory.Listed)
            {
                listed.Add((table.Rows[i], memory));
            }
        }

        return new AlarmsBody(
            [.. listed.OrderByDescending(one => one.Memory.Phase == AlarmPhase.Standing).ThenByDescending(one => one.Row.Priority)
                .ThenByDescending(one => one.Memory.FirstUp).ThenBy(one => one.Memory.RaisedUtcMilliseconds)
                .Select(one => Of(table, state, one.Row, one.Memory, utcMilliseconds))],
            [.. shelved.Select(one => Of(table, state, one.Row, one.Memory, utcMilliseconds))],
            [.. state.Recent.Reverse().Where(one => table.IndexOf(one.Key) >= 0).Take(MostRecent).Select(one => Of(table, one))]);
    }

    private static AlarmBody Of(AlarmTable table, AlarmState state, AlarmRow row, AlarmMemory memory, long utcMilliseconds) => new(
        row.Key, row.Name, WireNames.Of(row.Priority), WireNames.Of(row.Group), memory.FirstUp, memory.Phase == AlarmPhase.Standing,
        memory.RaisedUtcMilliseconds > 0 ? Iso(memory.RaisedUtcMilliseconds) : null, memory.Detail, row.Cause, row.Consequence, row.Action,
        [.. table.Rows.Where((_, i) => state.Rows[i].HeldBackBy == row.Key).Select(other => other.Name)],
        !memory.Unseen, memory.SeenBy, memory.ClearedBy,
        memory.Shelved ? Iso(utcMilliseconds + (long)((memory.ShelvedUntilSeconds - state.Seconds) * 1000)) : null, memory.ShelvedBy,
        row.MostShelvedSeconds / 60);

    private static AlarmEventBody Of(AlarmTable table, AlarmEvent happened)
    {
        AlarmRow row = table.Rows[table.IndexOf(happened.Key)];
        return new(
            happened.Number, WireNames.Of(happened.Kind), row.Key, row.Name, WireNames.Of(row.Priority), Iso(happened.UtcMilliseconds),
            happened.FirstUp, happened.Who, happened.Detail);
    }

    private static string Iso(long utcMilliseconds) => LocalTimes.Text(utcMilliseconds, 0).Replace("+00:00", "Z", StringComparison.Ordinal);
}
