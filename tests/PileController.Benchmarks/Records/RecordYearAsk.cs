namespace PileController.Benchmarks.Records;

/// <summary>What is asked of <see cref="RecordYear"/>.</summary>
/// <param name="Folder">A folder to be kept, or null.</param>
/// <param name="Days">How many days, or null for a year.</param>
/// <param name="Alone">True for the record without the stores beside it.</param>
/// <param name="JsonFile">Where the figures are written, too, or null.</param>
internal sealed record RecordYearAsk(string? Folder, int? Days, bool Alone, string? JsonFile)
{
    private const int MostDays = 1000;

    /// <summary>Reads arguments; null when one is wrong, which is told.</summary>
    public static RecordYearAsk? Of(string[] args, TextWriter error)
    {
        RecordYearAsk ask = new(null, null, false, null);
        for (int at = 0; at < args.Length; at++)
        {
            string? value = at + 1 < args.Length ? args[at + 1] : null;
            switch (args[at])
            {
                case "--alone":
                    ask = ask with { Alone = true };
                    break;
                case "--json" when value is not null:
                    ask = ask with { JsonFile = value };
                    at++;
                    break;
                case "--days" when int.TryParse(value, out int days) && days is >= 1 and <= MostDays:
                    ask = ask with { Days = days };
                    at++;
                    break;
                case { } folder when ask.Folder is null && !folder.StartsWith('-'):
                    ask = ask with { Folder = folder };
                    break;
                default:
                    error.WriteLine($"'{args[at]} {value}' is not understood. Allowed: [DIR] [--days 1 to {MostDays}] [--alone] [--json FILE].");
                    return null;
            }
        }

        return ask;
    }
}
