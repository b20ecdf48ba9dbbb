using System.Diagnostics;
using System.Globalization;
using PileController.Records.Checking;
using PileController.Records.Crash;

namespace PileController.Records.Tests;

public sealed class KillTests : IDisposable
{
    private const int Kills = 10;
    private readonly TrialFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public async Task Record_KilledAtAnyMoment_HasEveryAcknowledgedTick()
    {
        Random random = new(11);
        long acknowledged = 0;
        for (int kill = 0; kill < Kills; kill++)
        {
            acknowledged = Math.Max(acknowledged, await RunAndKillAsync(kill, linesToWaitFor: random.Next(1, 50)));

            VerifyReport report = RecordVerifier.Check(_folder.Path);

            Assert.Empty(report.Problems);
            Assert.True(report.LastSequence >= acknowledged, $"Kill {kill}: {report.LastSequence} of {acknowledged} came back.");
            Assert.Equal(report.LastSequence, report.Ticks);
        }

        ReplayReport replay = RecordReplayer.Run(_folder.Path, TrialTicks.Step);
        Assert.Equal(replay.Ticks, replay.Identical);
        Assert.Null(replay.FirstDifference);
    }

    private async Task<long> RunAndKillAsync(int seed, int linesToWaitFor)
    {
        ProcessStartInfo start = new("dotnet")
        {
            RedirectStandardOutput = true,
            ArgumentList =
            {
                typeof(TrialTicks).Assembly.Location, _folder.Path, seed.ToString(CultureInfo.InvariantCulture),
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
                process.Kill();
            }
        }

        await process.WaitForExitAsync();
        Assert.True(lines >= linesToWaitFor, $"The writer ended by itself after {lines} lines.");
        return acknowledged;
    }
}
