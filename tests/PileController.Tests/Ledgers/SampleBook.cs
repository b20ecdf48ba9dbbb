using PileController.Control.Decisions;
using PileController.Ledgers;
using PileController.Records.Accounts;
using PileController.Settings;

namespace PileController.Tests.Ledgers;

/// <summary>A made-up book of two seasons, the last one closed or open.</summary>
internal static class SampleBook
{
    private const double KWh = 3.6e6;

    public static Hand Jo { get; } = new("Jo", "command line", 1_770_000_000_000);

    public static FuelEntry Propane { get; } = new("propane", 2.8, 0.17, "$", Jo);

    public static Lessons Taught { get; } = new(
        new LearnedFactor(0.92, 1.03), new LearnedFactor(1.5, 1.1), new LearnedFactor(0.9, 1.05), 1.04, 2100, 2.6e7, 80, 220,
        new Fading(700, new DateOnly(2025, 12, 7), new DateOnly(2026, 2, 1), new DateOnly(2026, 3, 3)));

    /// <summary>One stretch of a date: 10 kWh ± 0.4 by water, 1 by air, 0.1 and 0.02 of electricity.</summary>
    public static DayEntry Day(DateOnly date, long sequence, double water = 10, double netWatts = 500) => new(
        date, sequence, sequence + 8639, Utc(date), Utc(date) + 86_390_000,
        new Totals(water * KWh, 0.04 * water * KWh, KWh, 0.1 * KWh, 0.02 * KWh, 300),
        new TickFigures(
            8640, 86_400, 40_000, 4_000, 1800, 3600, 80_000, 12, date.Day % 10 == 0 ? 1 : 0, netWatts * 86_400, 86_400, 32_400,
            date.Day % 5 == 0 ? 600 : 0, 6 - (date.Day % 7), -date.Day % 9));

    /// <summary>The book.</summary>
    public static Book Two(bool closed = true)
    {
        List<DayEntry> days = [];
        foreach (DateOnly first in new[] { new DateOnly(2024, 11, 1), new DateOnly(2025, 11, 1) })
        {
            for (int i = 0; i < 150; i++)
            {
                days.Add(Day(first.AddDays(i), 1 + (8640L * days.Count), 10 + (i % 7)));
            }
        }

        SeasonEntry Season(string name, int year, bool end) => new(
            name, new DateOnly(year, 11, 1), Jo, Propane, [new MassEntry(MassWay.In, 9000, Known.Guessed, "12 trailers", Jo)],
            [new PartEntry("circulating pump", 1, 110, false, Jo), new PartEntry("steel drum", 2, 45, true, Jo)],
            [new NoteEntry("Added water.", Jo)], end ? new Closing(new DateOnly(year + 1, 4, 12), Jo, Taught) : null);

        return new Book(
            Book.CurrentSchema, new Edge(days[^1].LastSequence, new Totals(1, 2, 3, 4, 5, 6), true, "a1"), days,
            [Season("Winter 2024", 2024, true), Season("Winter 2025", 2025, closed)]);
    }

    public static LedgerView View(Book book, PileSettings? settings = null) => new(book, null, settings ?? PileSettings.AlderBank);

    private static long Utc(DateOnly date) => new DateTimeOffset(date.ToDateTime(TimeOnly.MinValue), TimeSpan.Zero).ToUnixTimeMilliseconds();
}
