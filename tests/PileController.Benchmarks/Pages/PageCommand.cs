using System.Text.Json;
using PileController.Benchmarks.Records;

namespace PileController.Benchmarks.Pages;

/// <summary>The page over a long record in a real browser, and with many watchers.</summary>
internal static class PageCommand
{
    private const double Life = 1;
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(2);
    private static readonly JsonSerializerOptions Json = new(JsonSerializerDefaults.Web) { WriteIndented = true };

    /// <summary>Runs it.</summary>
    /// <param name="args">[DIR] [--days N] [--viewers N] [--minutes N] [--json FILE].</param>
    /// <param name="output">Where the figures go.</param>
    /// <param name="error">Where progress and refusals go.</param>
    /// <returns>0, or 2 for wrong use.</returns>
    public static async Task<int> RunAsync(string[] args, TextWriter output, TextWriter error)
    {
        if (PageAsk.Of(args, error) is not { } ask)
        {
            return 2;
        }

        try
        {
            using TrialDisk disk = TrialDisk.Open(ask.Folder);
            string folder = disk.Folder("record");
            await LongRecord.MakeAsync(folder, ask.Days, error);
            using CancellationTokenSource patience = new(Patience);
            using Served served = await Served.StartAsync(folder, Life, patience.Token);
            PageTimes times = await PageTimes.TakeAsync(served.Page, error);
            WatcherFigures watchers = await Watchers.WatchAsync(served, ask.Viewers, TimeSpan.FromMinutes(ask.Minutes), error);
            string text = JsonSerializer.Serialize(new { ask.Days, page = times, watchers }, Json);
            output.WriteLine(text);
            if (ask.JsonFile is { } file)
            {
                await File.WriteAllTextAsync(file, text + "\n");
            }

            return 0;
        }
        catch (IOException refused)
        {
            error.WriteLine(refused.Message);
            return 2;
        }
    }
}
