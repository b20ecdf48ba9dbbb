using System.Diagnostics;
using System.Globalization;
using PileController.Records.Checking;
using PileController.Records.Crash;
using Xunit.Abstractions;

namespace PileController.Records.Tests;

/// <summary>A writer killed at any moment: <c>PILE_KILLS=500</c> kills more often.</summary>
public sealed class KillTests(ITestOutputHelper output) : IDisposable
{
    private const int KillsARecord = 50;
    private static readonly int Kills = Trials.Of("PILE_KILLS", 20);
    private readonly TrialFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public async Task Record_KilledAtAnyMoment_HasEveryAcknowledgedTick()
    {
        Random random = new(11);
        long ticks = 0;
        for (int first = 0; first < Kills; first += KillsARecord)
        {
            string folder = Path.Combine(_folder.Path, first.ToString(CultureInfo.InvariantCulture));
            long acknowledged = 0;
            for (int kill = first; kill < Math.Min(first + KillsARecord, Kills); kill++)
            {
                acknowledged = Math.Max(acknowledged, await RunAndKillAsync(folder, kill, random));

                VerifyReport report = RecordVerifier.Check(folder);
                if (kill % 2 == 1)
                {
                    // Every other time the next writer finds what the one before left, not what a clean end makes of it.
                    await OpenAsync(folder, acknowledged);
                }

                Assert.Empty(report.Problems);
                Assert.True(report.LastSequence >= acknowledged, $"Kill {kill}: {report.LastSequence} of {acknowledged} came back.");
                Assert.Equal(report.LastSequence, report.Ticks);
            }

            ReplayReport replay = RecordReplayer.Run(folder, TrialTicks.Step);
            Assert.Equal(replay.Ticks, replay.Identical);
            Assert.Null(replay.FirstDifference);
            ticks += replay.Ticks;
        }

        output.WriteLine($"{Kills} kills, {ticks} ticks, none that was acknowledged lost.");
    }

    // Opened as a service opens it.
    private static async Task OpenAsync(string folder, long acknowledged)
    {
        await using LiteRecord record = LiteRecord.Open(new RecordOptions { DataDirectory = folder });
        long last = (await record.LastMemoryAsync(CancellationToken.None))?.Sequence ?? 0;

        Assert.True(last >= acknowledged, $"{last} of {acknowledged} came back.");
    }

    private static async Task<long> RunAndKillAsync(string folder, int seed, Random random)
    {
        int linesToWaitFor = random.Next(1, 50);
        ProcessStartInfo start = new("dotnet")
        {
            RedirectStandardOutput = true,
            ArgumentList =
            {
                typeof(TrialTicks).Assembly.Location, folder, seed.ToString(CultureInfo.InvariantCulture),
            },
        };
        using Process process = Process.Start(start)!;
        long acknowledged = 0;
        int lines = 0;
        while (await process.StandardOutput.ReadLineAsync() is { } line)
        {
            // A last line cut short by the kill reads as a smaller number.
            acknowledged = Math.Max(acknowledged, long.Parse(line, CultureInfo.InvariantCulture));
            if (++lines == linesToWaitFor)
            {
                // Not only right after an acknowledgement, but somewhere in what follows.
                await Task.Delay(random.Next(0, 12));
                process.Kill();
            }
        }

        await process.WaitForExitAsync();
        Assert.True(lines >= linesToWaitFor, $"The writer ended by itself after {lines} lines.");
        return acknowledged;
    }
}
