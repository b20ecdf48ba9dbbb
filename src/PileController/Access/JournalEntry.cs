namespace PileController.Access;

/// <summary>One line of the journal of access: who came from where and wanted what. Never a secret.</summary>
/// <param name="AtUtcMilliseconds">When.</param>
/// <param name="Who">The name of the session or key, else the one given with the change, else null.</param>
/// <param name="From">Address.</param>
/// <param name="By">How they were known: "session", "token", "loopback", or null for not at all.</param>
/// <param name="What">Method and route.</param>
/// <param name="Done">Whether it was done, or refused.</param>
/// <param name="Status">Status of the answer, 0 where there was none.</param>
/// <param name="Why">Why it was refused.</param>
/// <param name="Times">How often within a minute.</param>
internal sealed record JournalEntry(
    long AtUtcMilliseconds, string? Who, string From, string? By, string What, bool Done, int Status, string? Why, int Times = 1);
