using PileController.Ledgers;
using PileController.Ledgers.Editing;

namespace PileController.Commissioning.Sheets;

/// <summary>What the wind-down puts into the grower's book: the heap's weight and the notes.</summary>
internal static class SeasonEnd
{
    /// <summary>The book with weight and notes in its newest season; the same when there is neither, or no season.</summary>
    public static Book Enter(Book book, Walk walk, Hand by)
    {
        if (book.Seasons.Count == 0 || walk.Procedure.Id != "wind-down" || walk.Stopped is not null)
        {
            return book;
        }

        Trace trace = new(walk.Traces);
        if (trace["weight"].Figure is { } kilograms and >= LedgerLimits.LeastKilograms)
        {
            book = EntryEdits.Mass(book, null, new MassEntry(MassWay.Out, kilograms, Known.Guessed, "at the wind-down", by));
        }

        return trace["notes"].Text is { Length: > 0 } notes ? EntryEdits.Note(book, null, new NoteEntry(notes, by)) : book;
    }
}
