using PileController.Records;
using PileController.Serving;
using PileController.Settings;
using PileController.Simulation;

namespace PileController.Benchmarks.Pages;

/// <summary>The demo's holding and its record after most of a year, so that the program takes it up there.</summary>
internal static class LongRecord
{
    /// <summary>As far as the demo's weather goes from the day its heap is built, less a day that is lived while it is watched.</summary>
    public const int MostDays = 332;

    /// <summary>Fourteen days are seen at once and dragged over those before: in a shorter record nothing moves, and no frames are drawn.</summary>
    public const int LeastDays = 60;

    /// <summary>Lives so many days.</summary>
    public static async Task MakeAsync(string folder, int days, TextWriter progress)
    {
        progress.WriteLine($"living {days} days");
        PileSettings settings = PileSettings.AlderBank;
        int offset = HoldingBuild.StandardOffsetMinutes(settings);
        long start = new DateTimeOffset(Demo.Built.ToDateTime(TimeOnly.MinValue), TimeSpan.FromMinutes(offset)).ToUnixTimeMilliseconds();
        Holding holding = new(
            HoldingBuild.Plant(settings), settings.Control, settings.Rig, Demo.Weather(HoldingBuild.Place(settings)), offset, start);
        RecordOptions options = new()
        {
            DataDirectory = folder,
            Origin = DataFolder.Origin(settings),
            KeepTicks = RecordSettings.Ticks(settings.Record.KeepDays, settings.Control.TickSeconds),
            KeepMinuteTicks = RecordSettings.Ticks(settings.Record.KeepMinutesDays, settings.Control.TickSeconds),
        };
        await using (LiteRecord record = LiteRecord.Open(options))
        {
            await record.AppendHistoryAsync(History.Live(holding, settings.Control, days), CancellationToken.None);
        }

        new DataFolder(folder).KeepHolding(new WarmStart(settings.PlantFingerprint(), holding.Snapshot()));
    }
}
