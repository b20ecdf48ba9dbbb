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
/// <param name="Early">The service's memory once all had watched for two minutes, or for half the time.</param>
/// <param name="Late">The same at the end.</param>
/// <param name="PrivateMegabytesByMinute">Its own memory at each full minute, as it ran: whether it still rises at the end.</param>
/// <param name="PrivateGrowthMegabytes">Growth of its own memory between early and late, as it ran.</param>
/// <param name="HeapGrowthMegabytes">Growth of what is still in use after a full collection.</param>
internal sealed record WatcherFigures(
    int Viewers, double Minutes, double TicksADueTick, long LeastEvents, long MostEvents, int Unhealthy, ServiceMemory Early, ServiceMemory Late,
    IReadOnlyList<double> PrivateMegabytesByMinute, double PrivateGrowthMegabytes, double HeapGrowthMegabytes);

/// <summary>Open streams of ticks.</summary>
internal static class Watchers
{
    private const double TickSeconds = 10;
    private static readonly TimeSpan LongestSettling = TimeSpan.FromMinutes(2);

    /// <summary>Lets so many watch for so long.</summary>
    public static async Task<WatcherFigures> WatchAsync(Served served, int viewers, TimeSpan lasts, TextWriter progress)
    {
        progress.WriteLine($"{viewers} watchers for {lasts.TotalMinutes:F0} minutes");
        using HttpClient client = new() { BaseAddress = served.Page, Timeout = Timeout.InfiniteTimeSpan };
        using CancellationTokenSource over = new();
        long sequence = await SequenceAsync(client);
        Task<long>[] watching = [.. Enumerable.Range(0, viewers).Select(_ => CountAsync(client, over.Token))];
        int unhealthy = 0;
        int settled = (int)Math.Min(LongestSettling.TotalSeconds, lasts.TotalSeconds / 2);
        ServiceMemory? early = null;
        List<double> byMinute = [];
        using PeriodicTimer each = new(TimeSpan.FromSeconds(1));
        for (int second = 1; second <= (int)lasts.TotalSeconds; second++)
        {
            await each.WaitForNextTickAsync(CancellationToken.None);
            using HttpResponseMessage health = await client.GetAsync("/healthz");
            if (second % 60 == 0)
            {
                byMinute.Add(ServiceMemory.PrivateOf(served.Id));
            }

            unhealthy += health.IsSuccessStatusCode ? 0 : 1;
            early = second == settled ? await ServiceMemory.TakeAsync(served.Id) : early;
        }

        ServiceMemory late = await ServiceMemory.TakeAsync(served.Id);
        long last = await SequenceAsync(client);
        await over.CancelAsync();
        long[] events = await Task.WhenAll(watching);
        return new WatcherFigures(
            viewers, lasts.TotalMinutes, Math.Round((last - sequence) / (lasts.TotalSeconds / TickSeconds), 3),
            events.Min(), events.Max(), unhealthy, early!, late, byMinute,
            Math.Round(late.PrivateMegabytes - early!.PrivateMegabytes, 1), Math.Round(late.HeapMegabytes - early.HeapMegabytes, 1));
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
