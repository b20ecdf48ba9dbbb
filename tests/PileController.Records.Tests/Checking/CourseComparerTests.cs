using PileController.Control;
using PileController.Control.Decisions;
using PileController.Records.Checking;
using PileController.Records.Crash;

namespace PileController.Records.Tests.Checking;

public sealed class CourseComparerTests : IDisposable
{
    private static readonly RecordOrigin Known = new("a1", "1.0", "here");
    private readonly TrialFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public async Task Compare_SameSettings_FindsNothingAndAddsUpTheRecord()
    {
        List<TickEntry> ticks = await WriteAsync(900);

        CourseComparison found = Compare(TrialTicks.At(201), TrialTicks.At(701), Step(new ControlSettings()));

        Assert.Equal((500, 500, 0), (found.Ticks, found.AsRecorded, found.Differing));
        Assert.Null(found.FirstDifference);
        Assert.Equal(found.Then.GrantJoules, found.Now.GrantJoules);
        Decision[] stretch = [.. ticks.Skip(200).Take(500).Select(tick => tick.Decision)];
        Assert.Equal(stretch.Sum(decision => decision.GrantWatts * 10), found.Then.GrantJoules, 1e-6 * found.Then.GrantJoules);
        Assert.Equal(ticks[699].Decision.Totals.WaterJoules - ticks[199].Decision.Totals.WaterJoules, found.Then.WaterJoules, 1e-3);
        Assert.Equal(stretch.CountBy(decision => decision.Mode).OrderBy(pair => pair.Key).Select(pair => (long)pair.Value), found.Then.Modes.Values);
        Assert.Equal(stretch.CountBy(decision => decision.Curb).OrderBy(pair => pair.Key).Select(pair => (long)pair.Value), found.Then.Curbs.Values);
    }

    [Fact]
    public async Task Compare_StepThatGrantsLess_TellsWhereAndHowMuch()
    {
        await WriteAsync(900);

        CourseComparison found = Compare(TrialTicks.At(201), TrialTicks.At(701), TenWattsLess(from: 431));

        Assert.Equal((500, 500, 270), (found.Ticks, found.AsRecorded, found.Differing));
        Assert.Equal(431, found.FirstDifference!.Sequence);
        Assert.Contains("grant", found.FirstDifference.What, StringComparison.Ordinal);
        Assert.Contains("curb", found.FirstDifference.What, StringComparison.Ordinal);
        Assert.Equal(270 * 10 * 10, found.Then.GrantJoules - found.Now.GrantJoules, 1e-3);
        Assert.Equal(270, found.Now.Curbs[Curb.Saving]);
        Assert.Equal(found.Ticks, found.Now.Curbs.Values.Sum());
    }

    [Fact]
    public async Task Compare_OtherCourse_GoesOnWithItsOwnMemoryFromBlockToBlock()
    {
        await WriteAsync(900, TrialTicks.Step);
        List<double> handedOn = [];

        CourseComparer.Run(_folder.Path, TrialTicks.At(1).UtcMilliseconds, long.MaxValue, _ => TrialTicks.Step, (memory, readings, commands, at) =>
        {
            handedOn.Add(memory.Totals.Litres);
            (Decision decision, Memory after) = TrialTicks.Step(memory, readings, commands, at);
            return (decision, after with { Totals = after.Totals with { Litres = memory.Totals.Litres + 1 } });
        });

        Assert.Equal(Enumerable.Range(0, 900).Select(i => (double)i), handedOn);
    }

    [Fact]
    public async Task Compare_NoStretchGiven_IsTheLastNight()
    {
        await WriteAsync(900);
        Instant last = TrialTicks.At(900);
        DateTimeOffset local = DateTimeOffset.FromUnixTimeMilliseconds(last.UtcMilliseconds).ToOffset(TimeSpan.FromMinutes(last.OffsetMinutes));

        CourseComparison found = CourseComparer.Run(_folder.Path, null, null, _ => Step(new ControlSettings()), Step(new ControlSettings()));

        // The trial's last tick is at half past three in the morning.
        Assert.Equal(3, local.Hour);
        Assert.Equal(new DateTimeOffset(local.Date, local.Offset).AddHours(-6).ToUnixTimeMilliseconds(), found.FromUtcMilliseconds);
        Assert.Equal(new DateTimeOffset(local.Date, local.Offset).AddHours(9).ToUnixTimeMilliseconds(), found.ToUtcMilliseconds);
        Assert.Equal(900, found.Ticks);
    }

    [Fact]
    public async Task Compare_SettingsNotKept_IsTold()
    {
        await WriteAsync(100);

        CourseComparison found = CourseComparer.Run(_folder.Path, 0, long.MaxValue, _ => null, Step(new ControlSettings()));

        // In how many blocks the hundred ticks lie hangs on when they were made safe.
        Assert.Equal(0, found.Ticks);
        Assert.All(found.Problems, problem => Assert.Contains("a1", problem, StringComparison.Ordinal));
        Assert.StartsWith("Tick 1 to ", found.Problems[0], StringComparison.Ordinal);
        Assert.Contains("to 100:", found.Problems[^1], StringComparison.Ordinal);
    }

    private static ReplayStep Step(ControlSettings settings) =>
        (memory, readings, commands, at) => Controller.Step(settings, memory, readings, commands, at);

    private static ReplayStep TenWattsLess(long from) => (memory, readings, commands, at) =>
    {
        (Decision decision, Memory after) = Controller.Step(new ControlSettings(), memory, readings, commands, at);
        return decision.Sequence < from
            ? (decision, after)
            : (decision with { GrantWatts = decision.GrantWatts - 10, Curb = Curb.Saving }, after);
    };

    private CourseComparison Compare(Instant from, Instant to, ReplayStep other) => CourseComparer.Run(
        _folder.Path, from.UtcMilliseconds, to.UtcMilliseconds, origin => origin == Known ? Step(new ControlSettings()) : null, other);

    private async Task<List<TickEntry>> WriteAsync(int count, ReplayStep? step = null)
    {
        await using LiteRecord record = LiteRecord.Open(
            new RecordOptions { DataDirectory = _folder.Path, BlockTicks = 90, Origin = Known });
        Memory memory = Memory.Fresh;
        List<TickEntry> ticks = [];
        foreach (TickEntry trial in TrialTicks.First(count))
        {
            (Decision decision, Memory after) = (step ?? Step(new ControlSettings()))(memory, trial.Raw, trial.Commands, trial.Decision.At);
            ticks.Add(new TickEntry(trial.Raw, trial.Commands, memory, decision, after));
            record.TryAppend(ticks[^1]);
            memory = after;
        }

        return ticks;
    }
}
