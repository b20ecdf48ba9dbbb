namespace PileController.Control.Decisions;

/// <summary>Who asked for something, and from where, for the record. Control never looks at it.</summary>
/// <param name="Name">The name of the session or key, or the one the person gave; null where nobody gave one.</param>
/// <param name="By">How they were known: "session", "token" or "loopback"; null for not at all.</param>
/// <param name="From">The address it came from, as people read it.</param>
public sealed record Asker(string? Name, string? By, string From);
