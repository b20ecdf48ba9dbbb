using System.Diagnostics;
using PileController.Records;

namespace PileController.Benchmarks.Records;

/// <summary>Feeds ticks to a store and weighs what that takes.</summary>
internal static class Tally
{
    /// <summary>Writes some days.</summary>
    /// <param name="what">What the store is.</param>
    /// <param name="days">How many.</param>
    /// <param name="keep">Takes one tick.</param>
    /// <param name="end">Closes the store, and tells frames, commits and megabytes.</param>
    /// <param name="progress">Told each twelfth.</param>
    public static StoreFigures Of(
        string what, int days, Action<TickEntry> keep, Func<(long Frames, long Commits, double Megabytes)> end, TextWriter progress)
    {
        long written = ProcessFigures.WrittenBytes();
        long began = Stopwatch.GetTimestamp();
        long early = 0;
        long ticks = 0;
        long twelfth = Math.Max(1, (long)days * DemoTicks.ADay / 12);
        foreach (TickEntry tick in DemoTicks.Of(days))
        {
            keep(tick);
            if (++ticks % twelfth == 0)
            {
                early = ticks == twelfth ? ProcessFigures.ResidentBytes() : early;
                progress.WriteLine($"{what}: {ticks / DemoTicks.ADay} days, {Stopwatch.GetElapsedTime(began).TotalSeconds:F0} s");
            }
        }

        long late = ProcessFigures.ResidentBytes();
        (long frames, long commits, double megabytes) = end();
        return new StoreFigures
        {
            What = what,
            Days = days,
            FileMegabytes = Math.Round(megabytes, 1),
            WrittenMegabytesPerDay = Math.Round((ProcessFigures.WrittenBytes() - written) / 1e6 / days, 2),
            FramesPerDay = Math.Round((double)frames / days, 1),
            CommitsPerDay = Math.Round((double)commits / days, 1),
            MemoryGrowthMegabytes = Math.Round((late - early) / 1e6, 1),
            TicksPerSecond = Math.Round(ticks / Stopwatch.GetElapsedTime(began).TotalSeconds),
            Questions = new Dictionary<string, QuestionTime>(),
        };
    }
}
