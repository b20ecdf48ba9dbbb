using System.Diagnostics;
using System.Globalization;
using System.Net.Http.Json;
using System.Text.Json;

namespace PileController.Benchmarks.Records;

/// <summary>Kills the program while it serves its demo, and times how long after the next start its page answers with a tick.</summary>
internal static class ServeAgain
{
    private const int Kills = 20;
    private const double Speed = 60;
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(2);
    private static readonly JsonSerializerOptions Json = new(JsonSerializerDefaults.Web) { WriteIndented = true };

    /// <summary>Runs it.</summary>
    /// <param name="args">[--kills N].</param>
    /// <param name="output">Where the figures go.</param>
    /// <returns>0.</returns>
    public static async Task<int> RunAsync(string[] args, TextWriter output)
    {
        int kills = args is ["--kills", { } given] ? int.Parse(given, CultureInfo.InvariantCulture) : Kills;
        using TrialDisk disk = TrialDisk.Open(null);
        string folder = disk.Folder("record");
        using HttpClient client = new();

        // The first start makes the demo's fortnight and is no start after a kill.
        await StartAndKillAsync(client, folder);
        List<double> seconds = [];
        for (int kill = 0; kill < kills; kill++)
        {
            seconds.Add(await StartAndKillAsync(client, folder));
        }

        seconds.Sort();
        output.WriteLine(JsonSerializer.Serialize(
            new { kills, medianSeconds = Math.Round(seconds[kills / 2], 2), longestSeconds = Math.Round(seconds[^1], 2) }, Json));
        return 0;
    }

    private static async Task<double> StartAndKillAsync(HttpClient client, string folder)
    {
        using CancellationTokenSource patience = new(Patience);
        long began = Stopwatch.GetTimestamp();
        using Served served = await Served.StartAsync(folder, Speed, patience.Token);
        while ((await client.GetAsync(new Uri(served.Page, "/healthz"), patience.Token)).IsSuccessStatusCode is false)
        {
            await Task.Delay(5, patience.Token);
        }

        double seconds = Stopwatch.GetElapsedTime(began).TotalSeconds;
        long safe = await SafeAsync(client, served.Page, patience.Token);
        while (await SafeAsync(client, served.Page, patience.Token) == safe)
        {
            await Task.Delay(5, patience.Token);
        }

        return seconds;
    }

    private static async Task<long> SafeAsync(HttpClient client, Uri page, CancellationToken cancellation)
    {
        JsonElement now = await client.GetFromJsonAsync<JsonElement>(new Uri(page, "/api/now"), cancellation);
        return now.GetProperty("record").GetProperty("lastSequence").GetInt64();
    }
}
