using PileController.Records;
using PileController.Records.Keeping;
using PileController.Records.Storage;

namespace PileController.Benchmarks.Records;

/// <summary>
/// What reaches the block device under a record: days of the demo's ticks, synced and committed by simulated time. After
/// each sync all that the file system has put off is written out, as happens in life before the next sync a minute later;
/// run through in seconds, many minutes would else share one such write.
/// </summary>
internal static class RecordDevice
{
    private const int Days = 2;

    /// <summary>Runs it.</summary>
    /// <param name="args">DIR [--days N] [--json FILE]; DIR has to lie on a device that nobody else writes to.</param>
    /// <param name="output">Where the figures go.</param>
    /// <param name="error">Where refusals go.</param>
    /// <returns>0, or 2 for wrong use.</returns>
    public static async Task<int> RunAsync(string[] args, TextWriter output, TextWriter error)
    {
        if (RecordYearAsk.Of(args, error) is not { } ask)
        {
            return 2;
        }

        if (ask.Folder is null)
        {
            error.WriteLine("DIR is missing. Allowed: a new folder on a device that nobody else writes to.");
            return 2;
        }

        return await FigureRun.RunAsync(ask.JsonFile, output, error, _ => Task.FromResult<object>(Write(ask.Folder, ask.Days ?? Days)));
    }

    private static DeviceFigures Write(string given, int days)
    {
        using TrialDisk disk = TrialDisk.Open(given);
        using BlockDevice device = BlockDevice.Under(disk.Path);
        return Write(disk, device, days);
    }

    private static DeviceFigures Write(TrialDisk trial, BlockDevice device, int days)
    {
        string folder = trial.Folder("record");
        CountingDisk disk = new(new FolderDisk(folder));
        device.WriteOut();
        long all = device.WrittenBytes;
        long own = ProcessFigures.WrittenBytes();
        long putOff = 0;
        long atCommits = 0;
        int syncs = 0;
        using (RecordKeeper keeper = new(disk, OwnStore.Options(folder), TimeProvider.System, new Faults()))
        {
            foreach (TickEntry tick in DemoTicks.Of(days))
            {
                long safe = keeper.SafeSequence;
                int commits = disk.Commits;
                long before = device.WrittenBytes;
                keeper.Keep(tick);
                keeper.SyncIfDue();
                if (keeper.SafeSequence > safe)
                {
                    syncs++;
                    long synced = device.WrittenBytes;
                    device.WriteOut();
                    putOff += device.WrittenBytes - synced;
                    atCommits += disk.Commits > commits ? device.WrittenBytes - before : 0;
                }
            }
        }

        device.WriteOut();
        all = device.WrittenBytes - all;
        own = ProcessFigures.WrittenBytes() - own;
        return new DeviceFigures(
            device.Name, device.FileSystem, days, Round((double)syncs / days), Round((double)disk.Commits / days), ADay(all, days),
            ADay(own, days), ADay(all - own - putOff, days), ADay(putOff, days), ADay(atCommits, days));
    }

    private static double ADay(long bytes, int days) => Round(bytes / 1e6 / days);

    private static double Round(double figure) => Math.Round(figure, 2);
}

/// <summary>What came to a device a day. Megabytes are 1e6 bytes.</summary>
/// <param name="Device">Its number.</param>
/// <param name="FileSystem">What is on it.</param>
/// <param name="Days">Days of ticks.</param>
/// <param name="SyncsPerDay">Syncs that made ticks safe.</param>
/// <param name="CommitsPerDay">Commits to the store.</param>
/// <param name="MegabytesPerDay">All that was written to the device.</param>
/// <param name="OfTheRecord">What the record's files took of it, in whole pages.</param>
/// <param name="OfTheJournal">What the file system wrote besides while the record waited for a sync: its journal.</param>
/// <param name="PutOff">What it wrote later: its own blocks, in their place.</param>
/// <param name="AtCommits">What of all of it came at the syncs that committed a block to the store.</param>
internal sealed record DeviceFigures(
    string Device, string FileSystem, int Days, double SyncsPerDay, double CommitsPerDay, double MegabytesPerDay, double OfTheRecord,
    double OfTheJournal, double PutOff, double AtCommits);
