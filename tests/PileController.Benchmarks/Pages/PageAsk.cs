namespace PileController.Benchmarks.Pages;

/// <summary>What is asked of <see cref="PageCommand"/>.</summary>
/// <param name="Folder">A folder to be kept, or null.</param>
/// <param name="Days">Days of record behind the page.</param>
/// <param name="Viewers">Open streams at once.</param>
/// <param name="Minutes">How long they watch.</param>
/// <param name="JsonFile">Where the figures are written, too, or null.</param>
/// <param name="At">A page that is served already and is only timed, or null.</param>
internal sealed record PageAsk(string? Folder, int Days, int Viewers, int Minutes, string? JsonFile, Uri? At)
{
    private const int MostViewers = 1000;
    private const int MostMinutes = 600;

    /// <summary>Reads arguments; null when one is wrong, which is told.</summary>
    public static PageAsk? Of(string[] args, TextWriter error)
    {
        PageAsk ask = new(null, LongRecord.MostDays, 100, 10, null, null);
        for (int at = 0; at < args.Length; at++)
        {
            string? value = at + 1 < args.Length ? args[at + 1] : null;
            switch (args[at])
            {
                case "--json" when value is not null:
                    ask = ask with { JsonFile = value };
                    break;
                case "--at" when Uri.TryCreate(value, UriKind.Absolute, out Uri? page):
                    ask = ask with { At = page };
                    break;
                case "--days" when int.TryParse(value, out int days) && days is >= LongRecord.LeastDays and <= LongRecord.MostDays:
                    ask = ask with { Days = days };
                    break;
                case "--viewers" when int.TryParse(value, out int viewers) && viewers is >= 1 and <= MostViewers:
                    ask = ask with { Viewers = viewers };
                    break;
                case "--minutes" when int.TryParse(value, out int minutes) && minutes is >= 1 and <= MostMinutes:
                    ask = ask with { Minutes = minutes };
                    break;
                case { } folder when ask.Folder is null && !folder.StartsWith('-'):
                    ask = ask with { Folder = folder };
                    continue;
                default:
                    error.WriteLine(
                        $"'{args[at]} {value}' is not understood. Allowed: [DIR] [--days {LongRecord.LeastDays} to {LongRecord.MostDays}, since fewer leave nothing to drag] [--viewers 1 to {MostViewers}] [--minutes 1 to {MostMinutes}] [--at URL] [--json FILE].");
                    return null;
            }

            at++;
        }

        return ask;
    }
}
