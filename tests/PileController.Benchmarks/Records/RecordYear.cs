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
    private static readonly JsonSerializerOptions Json = new(JsonSerializerDefaults.Web) { WriteIndented = true };

    /// <summary>Runs it.</summary>
    /// <param name="args">[DIR] [--days N] [--alone] [--json FILE].</param>
    /// <param name="output">Where the figures go.</param>
    /// <param name="error">Where progress and refusals go.</param>
    /// <returns>0, or 2 for wrong use.</returns>
    public static async Task<int> RunAsync(string[] args, TextWriter output, TextWriter error)
    {
        if (RecordYearAsk.Of(args, error) is not { } ask)
        {
            return 2;
        }

        try
        {
            using TrialDisk disk = TrialDisk.Open(ask.Folder);
            string text = (await FiguresAsync(disk, ask, error)).ToJsonString(Json);
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

    private static async Task<JsonObject> FiguresAsync(TrialDisk disk, RecordYearAsk ask, TextWriter progress)
    {
        StoreFigures own = OwnStore.Write(disk, "record", ask.Days ?? Year, progress);
        own = own with { Questions = await OwnStore.AskAsync(disk.Folder("record")) };
        JsonObject all = JsonSerializer.SerializeToNode(own, Json)!.AsObject();
        if (!ask.Alone)
        {
            StoreFigures sqlite = SqliteStore.Write(disk, "sqlite", ask.Days ?? Year, progress);
            all["sqlite"] = JsonSerializer.SerializeToNode(sqlite with { Questions = await SqliteStore.AskAsync(disk.Folder("sqlite")) }, Json);
            all["naive"] = JsonSerializer.SerializeToNode(NaiveStore.Write(disk, "naive", Math.Min(ask.Days ?? NaiveDays, NaiveDays), progress), Json);
        }

        return all;
    }
}
