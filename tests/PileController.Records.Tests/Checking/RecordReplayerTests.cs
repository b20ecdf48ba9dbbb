using PileController.Control;
using PileController.Control.Decisions;
using PileController.Records.Checking;
using PileController.Records.Crash;

namespace PileController.Records.Tests.Checking;

public sealed class RecordReplayerTests : IDisposable
{
    private readonly TrialFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public async Task Replay_SameStep_IsIdentical()
    {
        await WriteAsync(900);

        ReplayReport report = RecordReplayer.Run(_folder.Path, TrialTicks.Step);

        Assert.Equal((900, 900), (report.Ticks, report.Identical));
        Assert.Null(report.FirstDifference);
        Assert.Empty(report.Problems);
        Assert.Equal([new ReplayStretch(new RecordOrigin("a1", "1.0", "here"), 1, 900, 900, 900, null)], report.Stretches);
    }

    [Fact]
    public async Task Replay_TheProductsControl_IsIdentical()
    {
        ControlSettings settings = new();
        ReplayStep step = (memory, readings, commands, at) => Controller.Step(settings, memory, readings, commands, at);
        await WriteAsync(700, step);

        ReplayReport report = RecordReplayer.Run(_folder.Path, step);

        Assert.Equal((700, 700), (report.Ticks, report.Identical));
        Assert.Null(report.FirstDifference);
    }

    [Fact]
    public async Task Replay_OneBitOfOneDecisionDiffers_IsFound()
    {
        await WriteAsync(900);

        ReplayReport report = RecordReplayer.Run(_folder.Path, (memory, readings, commands, at) =>
        {
            (Decision decision, Memory after) = TrialTicks.Step(memory, readings, commands, at);
            return decision.Sequence == 431
                ? (decision with { AirGrantWatts = Math.BitIncrement(decision.AirGrantWatts) }, after)
                : (decision, after);
        });

        Assert.Equal((900, 899), (report.Ticks, report.Identical));
        Assert.Equal(431, report.FirstDifference!.Sequence);
        Assert.Equal(TrialTicks.At(431).UtcMilliseconds, report.FirstDifference.UtcMilliseconds);
    }

    [Fact]
    public async Task Replay_FigureDiffers_IsNamed()
    {
        await WriteAsync(100);

        ReplayReport report = RecordReplayer.Run(_folder.Path, (memory, readings, commands, at) =>
        {
            (Decision decision, Memory after) = TrialTicks.Step(memory, readings, commands, at);
            return (decision with { MeansWatts = decision.MeansWatts + 5 }, after);
        });

        Assert.Equal(0, report.Identical);
        Assert.Contains("means was", report.FirstDifference!.What, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Replay_OnlyWhatIsHandedOnDiffers_IsFound()
    {
        await WriteAsync(100);

        ReplayReport report = RecordReplayer.Run(_folder.Path, (memory, readings, commands, at) =>
        {
            (Decision decision, Memory after) = TrialTicks.Step(memory, readings, commands, at);
            Totals totals = after.Totals with { Litres = Math.BitIncrement(after.Totals.Litres) };
            return (decision, decision.Sequence == 100 ? after with { Totals = totals } : after);
        });

        Assert.Equal((100, 100), (report.Ticks, report.Identical));
        Assert.Contains("hands on", report.FirstDifference!.What, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Replay_MemoryChangedAtARestart_StaysIdentical()
    {
        await WriteAsync(100);
        await using (LiteRecord record = Open())
        {
            Memory last = (await record.LastMemoryAsync(CancellationToken.None))!;
            foreach (TickEntry tick in TrialTicks.From(last with { Totals = default }, seed: 3).Take(100))
            {
                record.TryAppend(tick);
            }
        }

        ReplayReport report = RecordReplayer.Run(_folder.Path, TrialTicks.Step);

        Assert.Equal((200, 200), (report.Ticks, report.Identical));
        Assert.Null(report.FirstDifference);
    }

    [Fact]
    public async Task Replay_TicksOfAnotherBuild_AreToldApart()
    {
        await WriteAsync(200);
        await using (LiteRecord record = LiteRecord.Open(
            new RecordOptions { DataDirectory = _folder.Path, Origin = new RecordOrigin("a1", "1.1", "here") }))
        {
            foreach (TickEntry tick in TrialTicks.First(300).Skip(200))
            {
                record.TryAppend(tick);
            }
        }

        ReplayReport report = RecordReplayer.Run(_folder.Path, (memory, readings, commands, at) =>
        {
            (Decision decision, Memory after) = TrialTicks.Step(memory, readings, commands, at);
            return (decision.Sequence is > 200 and <= 250 ? decision with { MeansWatts = decision.MeansWatts + 5 } : decision, after);
        });

        Assert.Equal([("1.0", 1L, 200L, 200L), ("1.1", 201, 300, 50)],
            report.Stretches.Select(s => (s.Origin.Build, s.FirstSequence, s.LastSequence, s.Identical)));
        Assert.Equal((300, 250, 201), (report.Ticks, report.Identical, report.FirstDifference!.Sequence));
        Assert.Equal(report.FirstDifference, report.Stretches[1].FirstDifference);
    }

    private async Task WriteAsync(int count, ReplayStep? step = null)
    {
        await using LiteRecord record = Open();
        Memory memory = Memory.Fresh;
        foreach (TickEntry trial in TrialTicks.First(count))
        {
            (Decision decision, Memory after) = (step ?? TrialTicks.Step)(memory, trial.Raw, trial.Commands, trial.Decision.At);
            record.TryAppend(new TickEntry(trial.Raw, trial.Commands, memory, decision, after));
            memory = after;
        }
    }

    private LiteRecord Open() => LiteRecord.Open(
        new RecordOptions { DataDirectory = _folder.Path, BlockTicks = 90, Origin = new RecordOrigin("a1", "1.0", "here") });
}
