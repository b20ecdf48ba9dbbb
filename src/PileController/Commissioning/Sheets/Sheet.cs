using PileController.Ledgers;

namespace PileController.Commissioning.Sheets;

/// <summary>The commissioning sheet: what was proven of a rig, and who signed for it.</summary>
/// <param name="Schema">Form of the file; this program writes <see cref="CurrentSchema"/>.</param>
/// <param name="Entries">The tests that were kept, oldest first.</param>
internal sealed record Sheet(int Schema, IReadOnlyList<SheetEntry> Entries)
{
    /// <summary>The form this program writes.</summary>
    public const int CurrentSchema = 1;

    /// <summary>Most entries; the oldest leave first.</summary>
    public const int MostEntries = 500;

    /// <summary>A sheet with nothing on it.</summary>
    public static Sheet Empty { get; } = new(CurrentSchema, []);

    /// <summary>The sheet with one more test on it.</summary>
    public Sheet With(SheetEntry entry) => this with { Entries = [.. Entries.Append(entry).TakeLast(MostEntries)] };

    /// <summary>The newest outcome of one thing by some tests, and the entry it stands in; null when there is none.</summary>
    /// <param name="subject">The channel or actuator, by its name on the wire.</param>
    /// <param name="tests">The tests that count.</param>
    public (SheetEntry Entry, Outcome Outcome)? Latest(string subject, params ReadOnlySpan<string> tests)
    {
        for (int i = Entries.Count - 1; i >= 0; i--)
        {
            if (tests.Contains(Entries[i].Test) && Entries[i].Outcomes.FirstOrDefault(one => one.Subject == subject) is { } outcome)
            {
                return (Entries[i], outcome);
            }
        }

        return null;
    }
}

/// <summary>One test that was kept.</summary>
/// <param name="Test">Its name.</param>
/// <param name="Title">What it is called.</param>
/// <param name="By">Who signed for it, from where, and when.</param>
/// <param name="Simulated">True: the rig was simulated, so it proves nothing of real parts.</param>
/// <param name="Outcomes">What it found.</param>
internal sealed record SheetEntry(string Test, string Title, Hand By, bool Simulated, IReadOnlyList<Outcome> Outcomes);
