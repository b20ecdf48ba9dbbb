using System.Diagnostics;
using System.Globalization;
using PileController.Control;
using PileController.Control.Decisions;
using PileController.Records;
using PileController.Records.Checking;
using PileController.Records.Crash;

namespace PileController.Benchmarks.Records;

/// <summary>
/// A year of trial ticks in a record on disk, and what is asked of it: each question five times, the first on a record
/// that was just opened. Trial ticks wander in every channel at every tick, so files are larger than a real rig's.
/// </summary>
internal static class RecordYear
{
    private const long Day = 86_400_000;
    private const int TicksADay = 8640;

    /// <summary>Writes the record when the folder has none, then asks.</summary>
    /// <param name="folder">Its folder.</param>
    /// <param name="days">How many days of ticks.</param>
    /// <param name="output">Where the table goes.</param>
    public static async Task RunAsync(string folder, int days, TextWriter output)
    {
        if (!LiteRecord.Exists(folder))
        {
            await WriteAsync(folder, days, output);
        }

        foreach (IGrouping<string, FileInfo> kind in new DirectoryInfo(folder).GetFiles("*.pile").GroupBy(file => file.Name.Split('-')[0]))
        {
            output.WriteLine($"{kind.Key}: {kind.Count()} files, {kind.Sum(file => file.Length) / 1e6:F1} MB");
        }

        Stopwatch clock = Stopwatch.StartNew();
        await using (LiteRecord record = LiteRecord.Open(Options(folder)))
        {
            Memory? memory = await record.LastMemoryAsync(CancellationToken.None);
            Tell(output, $"opening, to the memory of tick {memory?.Sequence}", clock);
            await AskAsync(record, TrialTicks.At(memory?.Sequence ?? 0).UtcMilliseconds + 1, output);
        }

        clock.Restart();
        VerifyReport report = RecordVerifier.Check(folder);
        Tell(output, $"verify: {report.Ticks} ticks, {report.Days} days, {report.Decisions} decisions, {report.Problems.Count} problems", clock);
    }

    private static RecordOptions Options(string folder) => new()
    {
        DataDirectory = folder,
        KeepTicks = 60 * TicksADay,
        KeepMinuteTicks = 365 * TicksADay,
    };

    private static async Task WriteAsync(string folder, int days, TextWriter output)
    {
        Stopwatch clock = Stopwatch.StartNew();
        await using LiteRecord record = LiteRecord.Open(Options(folder));
        await record.AppendHistoryAsync(TrialTicks.From(Memory.Fresh, seed: 1).Take(days * TicksADay), CancellationToken.None);
        Tell(output, $"writing {days} days", clock);
    }

    private static async Task AskAsync(LiteRecord record, long end, TextWriter output)
    {
        string[] channels = [.. RecordSeries.All.Select(series => series.Name)];
        Task<string> Points(string[] series, long days, long step) => CountAsync(
            record.SamplesAsync(series, end - (days * Day), end, step, CancellationToken.None));
        Task<string> Lines(DecisionAsk ask) => CountLinesAsync(record.DecisionsAsync(ask, CancellationToken.None));
        await TimeAsync(output, "a day of every tick, all series", () => Points(channels, 1, 0));
        await TimeAsync(output, "a day of every tick, one series", () => Points(["heapCore"], 1, 0));
        await TimeAsync(output, "a day at 5 minutes, ten series", () => Points(channels[..10], 1, 300_000));
        await TimeAsync(output, "a month at 3 hours, ten series", () => Points(channels[..10], 30, 10_800_000));
        await TimeAsync(output, "a year to 1500 points, one series", () => Points(["heapCore"], 365, 365 * Day / 1500));
        await TimeAsync(output, "a year at a day, ten series", () => Points(channels[..10], 365, Day));
        await TimeAsync(output, "200 decisions, the newest", () => Lines(new DecisionAsk(0, end) { Limit = 201 }));
        await TimeAsync(output, "200 decisions of one mode and curb", () => Lines(
            new DecisionAsk(0, end) { Mode = Control.Modes.Mode.Priming, Curb = Curb.Floor, Limit = 201 }));
        await TimeAsync(output, "200 decisions half a year ago", () => Lines(new DecisionAsk(0, end - (180 * Day)) { Limit = 201 }));
        await TimeAsync(output, "a text that never occurs", () => Lines(new DecisionAsk(0, end) { Text = "nowhere to be found", Limit = 201 }));
    }

    private static async Task<string> CountAsync(Task<IReadOnlyList<IReadOnlyList<SeriesPoint>>> answer) =>
        $"{(await answer).Sum(points => points.Count)} points";

    private static async Task<string> CountLinesAsync(Task<IReadOnlyList<DecisionLine>> answer) => $"{(await answer).Count} lines";

    private static async Task TimeAsync(TextWriter output, string what, Func<Task<string>> ask)
    {
        List<string> times = [];
        string answer = "";
        for (int round = 0; round < 5; round++)
        {
            Stopwatch clock = Stopwatch.StartNew();
            TimeSpan before = Environment.CpuUsage.TotalTime;
            answer = await ask();
            TimeSpan worked = Environment.CpuUsage.TotalTime - before;
            times.Add(string.Create(CultureInfo.InvariantCulture, $"{clock.Elapsed.TotalMilliseconds:F1} ({worked.TotalMilliseconds:F0})"));
        }

        output.WriteLine($"{what}: {string.Join(", ", times)} ms (of processor time); {answer}");
    }

    private static void Tell(TextWriter output, string what, Stopwatch clock) =>
        output.WriteLine($"{what}: {clock.Elapsed.TotalMilliseconds:F0} ms");
}
