using System.Diagnostics;
using PileController.Control;
using PileController.Records;
using PileController.Records.Checking;
using PileController.Settings;

namespace PileController.Benchmarks.Records;

/// <summary>Days of the demo's ticks, recorded and decided again, as <c>record replay</c> does it.</summary>
internal static class RecordReplaySpeed
{
    private const int Days = 30;

    /// <summary>Runs it.</summary>
    /// <param name="args">[DIR] [--days N] [--json FILE].</param>
    /// <param name="output">Where the figures go.</param>
    /// <param name="error">Where refusals go.</param>
    /// <returns>0 when every tick came out the same, 1 when not, 2 for wrong use.</returns>
    public static async Task<int> RunAsync(string[] args, TextWriter output, TextWriter error)
    {
        if (RecordYearAsk.Of(args, error) is not { } ask)
        {
            return 2;
        }

        bool isSame = false;
        int run = await FigureRun.RunAsync(ask.JsonFile, output, error, async _ =>
        {
            (ReplayReport report, object figures) = await MeasureAsync(ask);
            isSame = report.Identical == report.Ticks;
            return figures;
        });
        return run == 0 && !isSame ? 1 : run;
    }

    private static async Task<(ReplayReport Report, object Figures)> MeasureAsync(RecordYearAsk ask)
    {
        using TrialDisk disk = TrialDisk.Open(ask.Folder);
        string folder = disk.Folder("record");
        await using (LiteRecord record = LiteRecord.Open(new RecordOptions { DataDirectory = folder }))
        {
            await record.AppendHistoryAsync(DemoTicks.Of(ask.Days ?? Days), CancellationToken.None);
        }

        ControlSettings control = PileSettings.AlderBank.Control;
        TimeSpan worked = Environment.CpuUsage.TotalTime;
        long began = Stopwatch.GetTimestamp();
        ReplayReport report = RecordReplayer.Run(
            folder, (memory, readings, commands, at) => Controller.Step(control, memory, readings, commands, at));
        double seconds = Stopwatch.GetElapsedTime(began).TotalSeconds;
        return (report, new
        {
            report.Ticks,
            report.Identical,
            seconds = Math.Round(seconds, 2),
            processorSeconds = Math.Round((Environment.CpuUsage.TotalTime - worked).TotalSeconds, 2),
            ticksPerSecond = Math.Round(report.Ticks / seconds),
        });
    }
}
