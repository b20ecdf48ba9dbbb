namespace PileController.Ledgers.Editing;

/// <summary>Opens, changes and closes seasons. Pure: gives a new book.</summary>
internal static class SeasonEdits
{
    /// <summary>Begins a season.</summary>
    /// <param name="book">The book.</param>
    /// <param name="name">Its name; no other season has it.</param>
    /// <param name="heapBuiltOn">First date of it.</param>
    /// <param name="today">The date now.</param>
    /// <param name="fuel">What heat would have cost otherwise.</param>
    /// <exception cref="LedgerRefusedException">One is open, the name is taken, or the date does not fit.</exception>
    public static Book Open(Book book, string name, DateOnly heapBuiltOn, DateOnly today, FuelEntry fuel)
    {
        if (book.Open is { } open)
        {
            throw new LedgerRefusedException($"The season \"{open.Name}\" is open; close it first.");
        }

        CheckName(book, null, name);
        CheckBuilt(book, book.Seasons.Count, heapBuiltOn, today);
        return book with { Seasons = [.. book.Seasons, new SeasonEntry(name, heapBuiltOn, fuel.By, fuel, [], [], [], null)] };
    }

    /// <summary>Changes the name, the first date or the fuel of the season that is open.</summary>
    /// <exception cref="LedgerRefusedException">None is open, the name is taken, or the date does not fit.</exception>
    public static Book Change(Book book, string? name, DateOnly? heapBuiltOn, DateOnly today, Func<FuelEntry, FuelEntry> fuel)
    {
        SeasonEntry season = TheOpen(book);
        CheckName(book, season, name ?? season.Name);
        if (heapBuiltOn is { } built)
        {
            CheckBuilt(book, book.Seasons.Count - 1, built, today);
        }

        return book.With(season, season with
        {
            Name = name ?? season.Name,
            HeapBuiltOn = heapBuiltOn ?? season.HeapBuiltOn,
            Fuel = fuel(season.Fuel),
        });
    }

    /// <summary>Closes the season that is open.</summary>
    /// <param name="book">The book.</param>
    /// <param name="on">Last date of it.</param>
    /// <param name="today">The date now.</param>
    /// <param name="by">Who closes it.</param>
    /// <param name="lessonsOf">What was learned, from the days of the season.</param>
    /// <exception cref="LedgerRefusedException">None is open, or the date does not fit.</exception>
    public static Book Close(Book book, DateOnly on, DateOnly today, Hand by, Func<SeasonEntry, Lessons?> lessonsOf)
    {
        SeasonEntry season = TheOpen(book);
        if (on < season.HeapBuiltOn || on > today)
        {
            throw new LedgerRefusedException(
                $"closedOn: {on:yyyy-MM-dd} is not allowed. Allowed: from {season.HeapBuiltOn:yyyy-MM-dd}, when the heap was built, to {today:yyyy-MM-dd}, today.");
        }

        SeasonEntry closed = season with { Closed = new Closing(on, by, null) };
        return book.With(season, closed with { Closed = new Closing(on, by, lessonsOf(closed)) });
    }

    /// <summary>The season that is open.</summary>
    /// <exception cref="LedgerRefusedException">None is.</exception>
    public static SeasonEntry TheOpen(Book book) =>
        book.Open ?? throw new LedgerRefusedException("No season is open; open one first.");

    private static void CheckName(Book book, SeasonEntry? itself, string name)
    {
        if (book.Seasons.Any(s => s != itself && string.Equals(s.Name, name, StringComparison.OrdinalIgnoreCase)))
        {
            throw new LedgerRefusedException($"name: \"{name}\" is not allowed, a season has it already. Allowed: any other name.");
        }
    }

    private static void CheckBuilt(Book book, int place, DateOnly built, DateOnly today)
    {
        DateOnly? after = place > 0 ? book.Seasons[place - 1].Closed!.On : null;
        if (built > today || built <= after)
        {
            throw new LedgerRefusedException(
                $"heapBuilt: {built:yyyy-MM-dd} is not allowed. Allowed: {(after is { } day ? $"after {day:yyyy-MM-dd}, when the season before was closed, and " : "")}not after {today:yyyy-MM-dd}, today.");
        }
    }
}
