using System.Globalization;
using System.Net.Http.Json;
using System.Net.ServerSentEvents;
using System.Text.Json;

namespace PileController.Benchmarks.Pages;

/// <summary>What many watchers cost.</summary>
/// <param name="Viewers">Open streams.</param>
/// <param name="Minutes">How long they watched.</param>
/// <param name="TicksADueTick">Ticks that came, for each that was due: 1 is on time.</param>
/// <param name="LeastEvents">Events of the watcher that was told least.</param>
/// <param name="MostEvents">Events of the watcher that was told most.</param>
/// <param name="Unhealthy">Times the service said of itself that its ticks were late, asked each second.</param>
/// <param name="MemoryGrowthMegabytes">Growth of the service's memory from half a minute on to the end.</param>
internal sealed record WatcherFigures(
    int Viewers, double Minutes, double TicksADueTick, long LeastEvents, long MostEvents, int Unhealthy, double MemoryGrowthMegabytes);

/// <summary>Open streams of ticks.</summary>
internal static class Watchers
{
    private const double TickSeconds = 10;
    private static readonly TimeSpan Settling = TimeSpan.FromSeconds(30);

    /// <summary>Lets so many watch for so long.</summary>
    public static async Task<WatcherFigures> WatchAsync(Served served, int viewers, TimeSpan lasts, TextWriter progress)
    {
        progress.WriteLine($"{viewers} watchers for {lasts.TotalMinutes:F0} minutes");
        using HttpClient client = new() { BaseAddress = served.Page, Timeout = Timeout.InfiniteTimeSpan };
        using CancellationTokenSource over = new();
        long sequence = await SequenceAsync(client);
        Task<long>[] watching = [.. Enumerable.Range(0, viewers).Select(_ => CountAsync(client, over.Token))];
        int unhealthy = 0;
        long early = 0;
        using PeriodicTimer each = new(TimeSpan.FromSeconds(1));
        for (int second = 1; second <= (int)lasts.TotalSeconds; second++)
        {
            await each.WaitForNextTickAsync(CancellationToken.None);
            using HttpResponseMessage health = await client.GetAsync("/healthz");
            unhealthy += health.IsSuccessStatusCode ? 0 : 1;
            early = second == (int)Settling.TotalSeconds ? served.ResidentBytes : early;
        }

        long end = served.ResidentBytes;
        long last = await SequenceAsync(client);
        await over.CancelAsync();
        long[] events = await Task.WhenAll(watching);
        return new WatcherFigures(
            viewers, lasts.TotalMinutes, Math.Round((last - sequence) / (lasts.TotalSeconds / TickSeconds), 3),
            events.Min(), events.Max(), unhealthy, Math.Round((end - early) / 1e6, 1));
    }

    private static async Task<long> CountAsync(HttpClient client, CancellationToken over)
    {
        long events = 0;
        try
        {
            using HttpResponseMessage answer = await client.GetAsync("/api/stream", HttpCompletionOption.ResponseHeadersRead, over);
            answer.EnsureSuccessStatusCode();
            await using Stream stream = await answer.Content.ReadAsStreamAsync(over);
            await foreach (SseItem<string> _ in SseParser.Create(stream).EnumerateAsync(over))
            {
                events++;
            }
        }
        catch (OperationCanceledException) when (over.IsCancellationRequested)
        {
            return events;
        }

        throw new IOException(string.Create(CultureInfo.InvariantCulture, $"A stream ended by itself after {events} events."));
    }

    private static async Task<long> SequenceAsync(HttpClient client) =>
        (await client.GetFromJsonAsync<JsonElement>("/api/now")).GetProperty("sequence").GetInt64();
}
