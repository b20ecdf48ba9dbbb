using PileController.Benchmarks.Records;

namespace PileController.Benchmarks.Pages;

/// <summary>The page over a long record in a real browser, and with many watchers.</summary>
internal static class PageCommand
{
    private const double Life = 1;
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(2);

    /// <summary>Runs it.</summary>
    /// <param name="args">[DIR] [--days N] [--viewers N] [--minutes N] [--at URL] [--json FILE].</param>
    /// <param name="output">Where the figures go.</param>
    /// <param name="error">Where progress and refusals go.</param>
    /// <returns>0, or 2 for wrong use.</returns>
    public static async Task<int> RunAsync(string[] args, TextWriter output, TextWriter error) =>
        PageAsk.Of(args, error) is { } ask
            ? await FigureRun.RunAsync(
                ask.JsonFile, output, error, _ => ask.At is { } page ? TimedAsync(page, error) : WatchedAsync(ask, error))
            : 2;

    // Beside the figures: how much else the machine had to do.
    private static async Task<object> TimedAsync(Uri page, TextWriter error)
    {
        string before = Load();
        return new { page = await PageTimes.TakeAsync(page, error), loadBefore = before, loadAfter = Load() };
    }

    private static async Task<object> WatchedAsync(PageAsk ask, TextWriter error)
    {
        using TrialDisk disk = TrialDisk.Open(ask.Folder);
        string folder = disk.Folder("record");
        await LongRecord.MakeAsync(folder, ask.Days, error);
        using CancellationTokenSource patience = new(Patience);
        using Served served = await Served.StartAsync(folder, Life, patience.Token);
        object times = await TimedAsync(served.Page, error);
        WatcherFigures watchers = await Watchers.WatchAsync(served, ask.Viewers, TimeSpan.FromMinutes(ask.Minutes), error);
        return new { ask.Days, times, watchers };
    }

    private static string Load() => string.Join(' ', File.ReadAllText("/proc/loadavg").Split(' ')[..2]);
}
