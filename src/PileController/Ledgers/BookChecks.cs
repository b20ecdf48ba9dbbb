using PileController.Plans.Money;

namespace PileController.Ledgers;

/// <summary>What no single value of a book can tell.</summary>
internal static class BookChecks
{
    /// <summary>What is wrong, in a clause, or null.</summary>
    public static string? Fault(Book book)
    {
        if (book.Days.Contains(null!) || book.Seasons.Any(s => s is null || s.Masses.Contains(null!) || s.Parts.Contains(null!) || s.Notes.Contains(null!)))
        {
            return "an entry of a list is null; allowed: whole entries";
        }

        for (int i = 0; i < book.Days.Count; i++)
        {
            DayEntry day = book.Days[i];
            if (day.LastSequence < day.FirstSequence)
            {
                return $"days[{i}].lastSequence is {day.LastSequence}; allowed: {day.FirstSequence} or more";
            }
        }

        for (int i = 0; i < book.Seasons.Count; i++)
        {
            if (Fault(book.Seasons, i) is { } fault)
            {
                return $"seasons[{i}].{fault}";
            }
        }

        return null;
    }

    private static string? Fault(IReadOnlyList<SeasonEntry> seasons, int i)
    {
        SeasonEntry season = seasons[i];
        if (i > 0 && (seasons[i - 1].Closed is not { } before || season.HeapBuiltOn <= before.On))
        {
            return $"heapBuiltOn is {season.HeapBuiltOn:yyyy-MM-dd}; allowed: a day after the season before was closed";
        }

        if (season.Closed is { } closed && closed.On < season.HeapBuiltOn)
        {
            return $"closed.on is {closed.On:yyyy-MM-dd}; allowed: {season.HeapBuiltOn:yyyy-MM-dd} or later";
        }

        if (Fuels.All.All(f => f.Name != season.Fuel.Name))
        {
            return $"fuel.name is \"{season.Fuel.Name}\"; allowed: {string.Join(", ", Fuels.All.Select(f => f.Name))}";
        }

        if (season.Fuel.PricePerUnit < 0 || season.Fuel.ElectricityPerKWh < 0)
        {
            return "fuel has a price below 0; allowed: 0 or more";
        }

        return season.Masses.Any(m => m.Kilograms <= 0) ? "masses has one of 0 or less; allowed: more than 0"
            : season.Parts.Any(p => p.Count <= 0 || p.PriceEach < 0) ? "parts has a count of 0 or less or a price below 0; allowed: more than 0 and 0 or more"
            : null;
    }
}
