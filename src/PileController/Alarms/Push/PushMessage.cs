namespace PileController.Alarms.Push;

/// <summary>One thing that is told.</summary>
/// <param name="Event">What happened: raised, returned, reminded or shelfEnded.</param>
/// <param name="Key">Which alarm.</param>
/// <param name="Name">Its name.</param>
/// <param name="Priority">low, medium or high.</param>
/// <param name="FirstUp">Whether it is the first of its group.</param>
/// <param name="AtUtc">When.</param>
/// <param name="Detail">What is the matter, or null.</param>
/// <param name="Cause">What it usually comes from.</param>
/// <param name="Consequence">What comes of it.</param>
/// <param name="Action">What to do.</param>
internal sealed record PushItem(
    string Event, string Key, string Name, string Priority, bool FirstUp, DateTimeOffset AtUtc, string? Detail, string Cause,
    string Consequence, string Action)
{
    /// <summary>An event as it is told; null where nobody is to be told of it.</summary>
    public static PushItem? Of(AlarmTable table, AlarmEvent happened, AlarmPriority least)
    {
        AlarmRow row = table.Rows[table.IndexOf(happened.Key)];
        bool telling = happened.Kind is AlarmEventKind.Raised or AlarmEventKind.Returned or AlarmEventKind.Reminded or AlarmEventKind.ShelfEnded;
        return !telling || happened.Quiet || row.Priority < least
            ? null
            : new PushItem(
                Panel.WireNames.Of(happened.Kind), row.Key, row.Name, Panel.WireNames.Of(row.Priority), happened.FirstUp,
                DateTimeOffset.FromUnixTimeMilliseconds(happened.UtcMilliseconds), happened.Detail, row.Cause, row.Consequence, row.Action);
    }
}

/// <summary>One message: what happened since the last one went out.</summary>
/// <param name="Holding">Name of the holding.</param>
/// <param name="Alarms">What happened, oldest first, at most <see cref="PushLine.MostTold"/>.</param>
/// <param name="More">How much more happened that is not listed.</param>
internal sealed record PushMessage(string Holding, IReadOnlyList<PushItem> Alarms, int More);
