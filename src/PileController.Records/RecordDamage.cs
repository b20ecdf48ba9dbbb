namespace PileController.Records;

/// <summary>
/// What of the record is damaged. Files that were set aside count until somebody empties the folder
/// <c>quarantine</c>, whenever they came there; parts that cannot be read, since the start.
/// </summary>
/// <param name="FilesSetAside">Files of ticks, summaries or the tail in that folder; a file's log counts with it.</param>
/// <param name="DamagedParts">Parts of files left in place that could not be read, and files that are gone.</param>
/// <param name="Newest">Name of the file set aside last, or what was said of the newest part when that came later.</param>
/// <param name="NewestUtcMilliseconds">When that was found.</param>
/// <param name="SinceUtcMilliseconds">When the oldest of all this was found.</param>
public sealed record RecordDamage(
    int FilesSetAside, int DamagedParts, string Newest, long NewestUtcMilliseconds, long SinceUtcMilliseconds);
