using PileController.Control;
using PileController.Control.Decisions;
using PileController.Control.Modes;
using PileController.Control.Readings;
using PileController.Records;
using PileController.Records.Keeping;
using PileController.Records.Storage;

namespace PileController.Benchmarks.Records;

/// <summary>The record, synced and committed by simulated time: each tick is given the chance of a sync of its own.</summary>
internal static class OwnStore
{
    private const long DayMilliseconds = 86_400_000;
    private const int Page = 200;

    public static RecordOptions Options(string folder) => new()
    {
        DataDirectory = folder,
        KeepTicks = 60 * DemoTicks.ADay,
        KeepMinuteTicks = 365 * DemoTicks.ADay,
    };

    /// <summary>Writes some days.</summary>
    public static StoreFigures Write(TrialDisk trial, string name, int days, TextWriter progress)
    {
        CountingDisk disk = new(new FolderDisk(trial.Folder(name)));
        long frames = 0;
        RecordKeeper keeper = new(disk, Options(trial.Folder(name)), TimeProvider.System, new Faults());
        return Tally.Of("record", days, Keep, End, progress);

        void Keep(TickEntry tick)
        {
            long safe = keeper.SafeSequence;
            keeper.Keep(tick);
            keeper.SyncIfDue();
            frames += keeper.SafeSequence > safe ? 1 : 0;
        }

        (long Frames, long Commits, double Megabytes) End()
        {
            keeper.Dispose();
            return (frames, disk.Commits, trial.Megabytes(name));
        }
    }

    // Each point is looked at, as the page does: a point is made when it is looked at.
    private static string Looked(IReadOnlyList<IReadOnlyList<SeriesPoint>> answer) =>
        $"{answer.Sum(points => points.Count)} points, {answer.Sum(points => points.Count(point => point.Mean is not null))} with a value";

    /// <summary>Asks what the page asks.</summary>
    public static async Task<IReadOnlyDictionary<string, QuestionTime>> AskAsync(string folder)
    {
        Dictionary<string, QuestionTime> times = [];
        string[] series = [.. RecordSeries.All.Select(one => one.Name)];
        await TimeAsync("rawDay24Channels", Points([.. ChannelTable.All.Select(channel => channel.Name)], 1, 0));
        await TimeAsync("rawDayAllSeries", Points(series, 1, 0));
        await TimeAsync("yearOfOneSeriesTo1500Points", Points(["heapCore"], 365, 365 * DayMilliseconds / 1500));
        await TimeAsync("newestDecisions", Lines(end => new DecisionAsk(0, end) { Limit = Page }));
        await TimeAsync("decisionsOfOneModeAndCurb", Lines(
            end => new DecisionAsk(0, end) { Mode = Mode.FrostGuard, Curb = Curb.Floor, Limit = Page }));
        await TimeAsync("decisionsWithAnAbsentText", Lines(end => new DecisionAsk(0, end) { Text = "nowhere to be found", Limit = Page }));
        return times;

        Func<LiteRecord, long, Task<string>> Points(string[] asked, long days, long step) => async (record, end) =>
            Looked(await record.SamplesAsync(asked, end - (days * DayMilliseconds), end, step, default));

        Func<LiteRecord, long, Task<string>> Lines(Func<long, DecisionAsk> ask) => async (record, end) =>
            $"{(await record.DecisionsAsync(ask(end), default)).Count} lines";

        async Task TimeAsync(string what, Func<LiteRecord, long, Task<string>> ask)
        {
            await using LiteRecord record = LiteRecord.Open(Options(folder));
            Memory memory = (await record.LastMemoryAsync(default))!;
            long end = DemoTicks.StartUtcMilliseconds + (memory.Sequence * 10_000) + 1;
            times.Add(what, await QuestionClock.TimeAsync(() => ask(record, end)));
        }
    }
}
