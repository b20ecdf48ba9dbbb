namespace PileController.Ledgers.Editing;

/// <summary>
/// Writes notes, masses and parts into a season: the one named, or the open one, or the last when none is open; a heap is
/// weighed after its season has ended. Pure: gives a new book.
/// </summary>
internal static class EntryEdits
{
    /// <summary>Adds a note.</summary>
    public static Book Note(Book book, string? season, NoteEntry note) => Edit(book, season, s => s with { Notes = [.. s.Notes, note] });

    /// <summary>Adds a mass; of each way the last one counts, the others stay to be seen.</summary>
    public static Book Mass(Book book, string? season, MassEntry mass) => Edit(book, season, s => s with { Masses = [.. s.Masses, mass] });

    /// <summary>Adds a part, or puts it in the place of the one of the same name; one of which there are none is taken out.</summary>
    public static Book Part(Book book, string? season, PartEntry part) => Edit(book, season, s =>
    {
        int at = s.Parts.ToList().FindIndex(p => string.Equals(p.Name, part.Name, StringComparison.OrdinalIgnoreCase));
        List<PartEntry> parts = [.. s.Parts];
        if (at >= 0)
        {
            parts.RemoveAt(at);
        }

        if (part.Count > 0)
        {
            parts.Insert(at >= 0 ? at : parts.Count, part);
        }

        return s with { Parts = parts };
    });

    /// <summary>The season of a name, or the one that is meant when none is given.</summary>
    /// <exception cref="LedgerRefusedException">There is none.</exception>
    public static SeasonEntry Find(Book book, string? season)
    {
        if (book.Seasons.Count == 0)
        {
            throw new LedgerRefusedException("The book holds no season yet; open one first.");
        }

        return season is null
            ? book.Seasons[^1]
            : book.Seasons.FirstOrDefault(s => string.Equals(s.Name, season, StringComparison.OrdinalIgnoreCase))
                ?? throw new LedgerRefusedException(
                    $"season: \"{season}\" is not in the book. Allowed: {string.Join(", ", book.Seasons.Select(s => s.Name))}.");
    }

    private static Book Edit(Book book, string? season, Func<SeasonEntry, SeasonEntry> change)
    {
        SeasonEntry found = Find(book, season);
        return book.With(found, change(found));
    }
}
