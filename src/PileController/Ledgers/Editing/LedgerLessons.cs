using PileController.Control;

namespace PileController.Ledgers.Editing;

/// <summary>What a season that is being closed has taught.</summary>
internal static class LedgerLessons
{
    /// <summary>The lessons; null when control has seen nothing yet.</summary>
    public static Lessons? Of(LedgerView view, Memory? memory, SeasonEntry season) =>
        memory is null ? null : Lessons.Of(memory, view.Settings.Control, view.DaysOf(season));
}
