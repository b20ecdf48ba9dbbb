namespace PileController.Panel.Alarms;

/// <summary>All of the alarms that people look at.</summary>
/// <param name="Standing">What stands, and what has ended unseen; the worst first.</param>
/// <param name="Shelved">What is on the shelf.</param>
/// <param name="Recent">What happened, newest first.</param>
internal sealed record AlarmsBody(IReadOnlyList<AlarmBody> Standing, IReadOnlyList<AlarmBody> Shelved, IReadOnlyList<AlarmEventBody> Recent);

/// <summary>One alarm.</summary>
/// <param name="Key">Its key.</param>
/// <param name="Name">Its name.</param>
/// <param name="Priority">low, medium or high.</param>
/// <param name="Group">Its group.</param>
/// <param name="FirstUp">Whether it was the first of its group.</param>
/// <param name="Stands">False where it has ended and nobody has seen it yet, or where it is shelved and does not hold.</param>
/// <param name="SinceUtc">When it rose, ISO 8601; null where it never did.</param>
/// <param name="Detail">What was the matter, or null.</param>
/// <param name="Cause">What it usually comes from.</param>
/// <param name="Consequence">What comes of it.</param>
/// <param name="Action">What to do.</param>
/// <param name="Follows">Names of the alarms that are held back because they follow from it.</param>
/// <param name="Seen">Whether a person has seen it.</param>
/// <param name="SeenBy">Who, or null.</param>
/// <param name="ClearedBy">Who ended it by clearing its trip, empty for somebody without a name; null where it stands or ended by itself.</param>
/// <param name="ShelvedUntilUtc">When its shelving ends if the controller runs on, ISO 8601; null where it is not shelved.</param>
/// <param name="ShelvedBy">Who shelved it, or null.</param>
/// <param name="MostShelvedMinutes">For how long it may be shelved.</param>
internal sealed record AlarmBody(
    string Key, string Name, string Priority, string Group, bool FirstUp, bool Stands, string? SinceUtc, string? Detail, string Cause,
    string Consequence, string Action, IReadOnlyList<string> Follows, bool Seen, string? SeenBy, string? ClearedBy, string? ShelvedUntilUtc, string? ShelvedBy,
    double MostShelvedMinutes);

/// <summary>One line of the history.</summary>
internal sealed record AlarmEventBody(
    long Number, string Event, string Key, string Name, string Priority, string AtUtc, bool FirstUp, string? Who, string? Detail);
