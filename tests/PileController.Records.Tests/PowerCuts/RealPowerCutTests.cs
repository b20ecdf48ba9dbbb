using System.Diagnostics;
using System.Globalization;
using PileController.Records.Checking;
using PileController.Records.Crash;
using Xunit.Abstractions;

namespace PileController.Records.Tests.PowerCuts;

/// <summary>
/// The power goes while a process writes a record on ext4: <c>PILE_POWER_CUTS=1000</c> cuts more often. What the process
/// sends to its drive is logged once and cut at many points; each time ext4 recovers by itself, and the record is looked at.
/// </summary>
public sealed class RealPowerCutTests(ITestOutputHelper output) : IDisposable
{
    private const int CutsARun = 50;
    private const int TicksARun = 900;
    private static readonly int Cuts = Trials.Of("PILE_POWER_CUTS", 16);
    private readonly TrialFolder _folder = new();
    private int _checks;

    public void Dispose() => _folder.Dispose();

    [RealPowerCutFact]
    public async Task Record_PowerCutOnARealFileSystem_LosesNothingAcknowledgedAndAtMostAMinute()
    {
        byte[] drive = MountedDrive.Fresh(_folder.Path);
        Random random = new(41);
        long mostLost = 0;
        long found = 0;
        long writes = 0;
        for (int first = 0; first < Cuts; first += CutsARun)
        {
            byte[] before = (byte[])drive.Clone();
            IReadOnlyList<DriveEvent> events = await WriteAsync(drive, seed: first);
            writes += events.Count(happened => happened.Kind is DriveEventKind.Write or DriveEventKind.Flush);

            // The last state becomes the next run's: what a cut leaves behind has to be lived with.
            CutDrive cutDrive = new(before, events, found);
            foreach (int cut in Enumerable.Range(0, Math.Min(CutsARun, Cuts - first)).Select(_ => random.Next(1, events.Count)).Order())
            {
                drive = cutDrive.At(cut, random);
                found = await CheckAsync(drive, $"Run {first / CutsARun}, cut before event {cut} of {events.Count}", cutDrive);
                mostLost = Math.Max(mostLost, cutDrive.Taken - found);
            }
        }

        output.WriteLine($"{Cuts} cuts of {writes} writes and flushes: nothing acknowledged lost, at most {mostLost} ticks, no file set aside.");
    }

    // The writer runs to its end or is killed with its drive; either way the log has every moment in it.
    private async Task<IReadOnlyList<DriveEvent>> WriteAsync(byte[] bytes, int seed)
    {
        string shown = Directory.CreateDirectory(Path.Combine(_folder.Path, "shown")).FullName;
        string mounted = Directory.CreateDirectory(Path.Combine(_folder.Path, "mounted")).FullName;
        using LoggedDrive drive = LoggedDrive.Show(shown, bytes);
        using (MountedDrive.Mount(drive.DrivePath, mounted))
        {
            ProcessStartInfo start = new("dotnet")
            {
                RedirectStandardError = true,
                ArgumentList =
                {
                    typeof(TrialTicks).Assembly.Location, Path.Combine(mounted, "record"), Text(seed), drive.ToldPath, Text(TicksARun),
                },
            };
            using Process process = Process.Start(start)!;
            string error = await process.StandardError.ReadToEndAsync();
            await process.WaitForExitAsync();
            Assert.True(process.ExitCode == 0, error);
        }

        return drive.Log.Events;
    }

    private async Task<long> CheckAsync(byte[] bytes, string what, CutDrive cut)
    {
        // Never the same file twice: who keeps a mount namespace of its own may hold on to the file system that was unmounted
        // here, and a loop device that is in use shows what it has read already.
        string file = Path.Combine(_folder.Path, $"after-{_checks++}");
        string folder = Directory.CreateDirectory(Path.Combine(_folder.Path, "recovered")).FullName;
        await WriteSparselyAsync(file, bytes);
        long found = 0;
        using (MountedDrive.Mount(file, folder))
        {
            string data = Path.Combine(folder, "record");
            if (LiteRecord.Exists(data))
            {
                VerifyReport report = RecordVerifier.Check(data);
                Assert.True(report.Problems.Count == 0, $"{what}: {string.Join(" ", report.Problems)}");
                found = report.LastSequence;
                await using LiteRecord record = LiteRecord.Open(PacedWriter.OptionsFor(data));
                Assert.Equal(found, (await record.LastMemoryAsync(CancellationToken.None))?.Sequence ?? 0);
                Assert.Null(record.Health.Damage);
                Assert.False(Directory.Exists(Path.Combine(data, "quarantine")), $"{what}: files were set aside.");
            }
        }

        File.Delete(file);
        Assert.True(found >= cut.Safe, $"{what}: {found} of {cut.Safe} acknowledged ticks came back.");
        Assert.True(
            cut.Taken - found <= PacedWriter.OptionsFor("any").SyncTicks, $"{what}: {found} of {cut.Taken} ticks came back.");
        return found;
    }

    private static async Task WriteSparselyAsync(string file, byte[] bytes)
    {
        const int page = 4096;
        await using FileStream stream = new(file, FileMode.Create, FileAccess.Write);
        stream.SetLength(bytes.Length);
        for (int at = 0; at < bytes.Length; at += page)
        {
            if (bytes.AsSpan(at, page).ContainsAnyExcept((byte)0))
            {
                stream.Position = at;
                stream.Write(bytes, at, page);
            }
        }
    }

    private static string Text(int number) => number.ToString(CultureInfo.InvariantCulture);
}
