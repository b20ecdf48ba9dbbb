using System.Text.Json;
using System.Text.Json.Nodes;

namespace PileController.Benchmarks.Records;

/// <summary>
/// A simulated year of the demo's ticks in the record on disk, what that takes, and what the page's questions take;
/// beside it the same ticks in two other stores.
/// </summary>
internal static class RecordYear
{
    private const int Year = 365;
    private const int NaiveDays = 3;
    private static readonly JsonSerializerOptions Json = new(JsonSerializerDefaults.Web);

    /// <summary>Runs it. The file has the figures of each store as soon as that is done.</summary>
    /// <param name="args">[DIR] [--days N] [--alone] [--json FILE].</param>
    /// <param name="output">Where the figures go.</param>
    /// <param name="error">Where progress and refusals go.</param>
    /// <returns>0, or 2 for wrong use.</returns>
    public static async Task<int> RunAsync(string[] args, TextWriter output, TextWriter error) =>
        RecordYearAsk.Of(args, error) is { } ask
            ? await FigureRun.RunAsync(ask.JsonFile, output, error, soFar => FiguresAsync(ask, error, soFar))
            : 2;

    private static async Task<object> FiguresAsync(RecordYearAsk ask, TextWriter progress, Func<object, Task> soFar)
    {
        using TrialDisk disk = TrialDisk.Open(ask.Folder);
        StoreFigures own = OwnStore.Write(disk, "record", ask.Days ?? Year, progress);
        own = own with { Questions = await OwnStore.AskAsync(disk.Folder("record")) };
        JsonObject all = JsonSerializer.SerializeToNode(own, Json)!.AsObject();
        if (!ask.Alone)
        {
            await soFar(all);
            StoreFigures sqlite = SqliteStore.Write(disk, "sqlite", ask.Days ?? Year, progress);
            all["sqlite"] = JsonSerializer.SerializeToNode(sqlite with { Questions = await SqliteStore.AskAsync(disk.Folder("sqlite")) }, Json);
            await soFar(all);
            all["naive"] = JsonSerializer.SerializeToNode(NaiveStore.Write(disk, "naive", Math.Min(ask.Days ?? NaiveDays, NaiveDays), progress), Json);
        }

        return all;
    }
}
