using PileController.Control.Decisions;
using PileController.Records.Accounts;

namespace PileController.Ledgers;

/// <summary>A stretch of ticks that belongs to one local date.</summary>
/// <param name="Date">The date.</param>
/// <param name="FirstSequence">Number of its first tick.</param>
/// <param name="LastSequence">Number of its last tick.</param>
/// <param name="FromUtcMilliseconds">Wall time of its first tick.</param>
/// <param name="ToUtcMilliseconds">Wall time of its last tick.</param>
/// <param name="Energy">Running totals at its end less those at its beginning.</param>
/// <param name="Figures">What was counted tick by tick.</param>
internal sealed record DayEntry(
    DateOnly Date, long FirstSequence, long LastSequence, long FromUtcMilliseconds, long ToUtcMilliseconds, Totals Energy,
    TickFigures Figures);
