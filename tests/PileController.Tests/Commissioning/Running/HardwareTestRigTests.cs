using System.Threading.Channels;
using Microsoft.Extensions.Time.Testing;
using PileController.Commissioning;
using PileController.Commissioning.Running;
using PileController.Control.Decisions;
using PileController.Rigs;
using PileController.Settings;
using PileController.Tests.Support;

namespace PileController.Tests.Commissioning.Running;

public sealed class HardwareTestRigTests
{
    private static readonly PileSettings Fast = PileSettings.AlderBank with { Control = PileSettings.AlderBank.Control with { TickSeconds = 1 } };

    [Fact]
    public async Task Open_RigThatWasLeftRunning_IsSafeAtOnce()
    {
        FakeRig rig = new() { Reads = MadeUp.Readings };

        await using HardwareTestRig opened = await HardwareTestRig.OpenAsync(rig, null, new FakeRecord(), Fast, TimeProvider.System, CancellationToken.None);

        Assert.Equal(["safe"], rig.Calls);
    }

    [Fact]
    public async Task Tick_PumpTakenByHand_GoesThroughTheOrdinaryTickIntoTheRecord()
    {
        FakeRig rig = new() { Reads = MadeUp.Readings };
        FakeRecord record = new();
        HardwareTestRig opened = await HardwareTestRig.OpenAsync(rig, null, record, Fast, TimeProvider.System, CancellationToken.None);

        Look look = await opened.TickAsync([new TakeByHand(Actuator.Pump, 0.5, 60_000, "Robin")], CancellationToken.None);

        Assert.Equal(0.5, look.Outputs.PumpDuty);
        Assert.Equal(0.5, rig.Told.PumpDuty);
        await opened.DisposeAsync();
        Assert.Equal(Outputs.Safe, rig.Told);
    }

    [Fact]
    public async Task Tick_WithATimerInSeries_FeedsItWhileAllIsWellAndNoLonger()
    {
        FakeRig rig = new() { Reads = MadeUp.Readings };
        ToldLine line = new();
        HardwareTestRig opened = await HardwareTestRig.OpenAsync(rig, line, new FakeRecord(), Fast, TimeProvider.System, CancellationToken.None);

        await opened.TickAsync([], CancellationToken.None);
        bool afterGood = line.IsWell;
        rig.Reads = _ => throw new IOException("The bus is silent.");
        await opened.TickAsync([], CancellationToken.None);
        bool afterFault = line.IsWell;
        rig.Reads = MadeUp.Readings;
        await opened.TickAsync([], CancellationToken.None);
        bool afterRecovery = line.IsWell;
        await opened.DisposeAsync();

        Assert.Equal((true, false, true, false), (afterGood, afterFault, afterRecovery, line.IsWell));
    }

    [Fact]
    public async Task Wait_LongerThanALineIsHeld_FeedsTheTimerMeanwhile() => await Task.Run(async () =>
    {
        FakeTimeProvider time = new(PanelHost.Begins);
        ToldLine line = new();
        PileSettings slow = Fast with { Control = Fast.Control with { TickSeconds = 60 } };
        await using HardwareTestRig opened = await HardwareTestRig.OpenAsync(new FakeRig { Reads = MadeUp.Readings }, line, new FakeRecord(), slow, time, CancellationToken.None);
        await opened.TickAsync([], CancellationToken.None);

        using CancellationTokenSource ends = new();
        int before = line.Said;
        Task<Look> waits = opened.TickAsync([], ends.Token).AsTask();
        for (int i = 0; i < 10; i++)
        {
            time.Advance(TimeSpan.FromSeconds(3));
        }

        // At once, and every three seconds.
        Assert.Equal((11, true), (line.Said - before, line.IsWell));
        await ends.CancelAsync();
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => waits);
    });

    [Fact]
    public async Task Run_GivenUpFromOutside_WaitsForNoMoreTick()
    {
        using CancellationTokenSource ends = new();
        FakeRig rig = new() { Reads = MadeUp.Readings };
        PileSettings slow = Fast with { Control = Fast.Control with { TickSeconds = 60 } };
        FakeTimeProvider time = new(PanelHost.Begins);
        HardwareTestRig opened = await HardwareTestRig.OpenAsync(rig, null, new FakeRecord(), slow, time, CancellationToken.None);
        Procedure procedure = new("trial", "A trial", [], [new("run", "Runs.") { Moves = [new(Actuator.Pump, 1)], LeastSeconds = 600 }], _ => []);

        // The first tick runs at once; the clock never comes to the second.
        Task<Walk> run = Leading.RunAsync(procedure, opened, new TypingGrower(TextReader.Null, TextWriter.Null, () => 0), "Robin", ends.Token);
        await ends.CancelAsync();
        Walk walk = await run;
        await opened.DisposeAsync();

        Assert.True(walk.Ended);
        Assert.Equal("safe", rig.Calls.Last());
    }

    [Fact]
    public async Task Typed_BeforeTheQuestion_AnswersNothing()
    {
        double now = 30;
        using LineByLine keys = new();
        TypingGrower grower = new(keys, TextWriter.Null, () => now);
        Procedure procedure = new("trial", "A trial", [], [new("ask", "Look.") { Asks = true, Question = Question.YesNo("Done?") }], _ => []);
        await keys.TypeAsync("yes");
        now = 40;
        Walk walk = Walk.Begin(procedure).Take(new Look(40, PileController.Control.Readings.RigReadings.None, Outputs.Safe, null));

        Assert.Null(grower.Reply(walk));
        now = 41;
        await keys.TypeAsync("no");

        Assert.Equal(0, grower.Reply(walk)!.Figure);
    }

    [Theory]
    [InlineData("6.5", 6.5)]
    [InlineData("tea\n6.5", 6.5)]
    public async Task Typed_Answer_IsTakenOnceItIsAllowed(string typed, double figure)
    {
        StringWriter said = new();
        TypingGrower grower = new(new StringReader(typed + "\n"), said, () => 42);
        Procedure procedure = new("trial", "A trial", [], [new("ask", "Look.") { Asks = true, Question = Question.Number("How much?", "L", 1, 10) }], _ => []);
        Walk walk = Walk.Begin(procedure).Take(new Look(40, PileController.Control.Readings.RigReadings.None, Outputs.Safe, null));

        Reply? reply = null;
        while (reply is null)
        {
            await Task.Yield();
            reply = grower.Reply(walk);
        }

        Assert.Equal((figure, 42, false), (reply.Figure, reply.Seconds, reply.GivesUp));
        Assert.Contains("How much? (a number from 1 to 10 (L); \"stop\" gives up)", said.ToString());
        Assert.Equal(typed.StartsWith("tea", StringComparison.Ordinal), said.ToString().Contains("\"tea\" is not allowed", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Typed_NothingMore_GivesUp()
    {
        TypingGrower grower = new(new StringReader(""), new StringWriter(), () => 0);
        Walk walk = Walk.Begin(Catalogue.Of("wind-down", Fast, new TestAsk()));
        Reply? reply = null;
        while (reply is null)
        {
            await Task.Yield();
            reply = grower.Reply(walk);
        }

        Assert.True(reply.GivesUp);
    }

    // Remembers the last word and counts the words.
    private sealed class ToldLine : IHeldLine
    {
        public bool IsWell { get; private set; }

        public int Said { get; private set; }

        public void Say(bool allIsWell)
        {
            IsWell = allIsWell;
            Said++;
        }
    }

    // A keyboard on which a line is typed when the reader waits for one.
    private sealed class LineByLine : TextReader
    {
        private readonly Channel<string> _typed = Channel.CreateUnbounded<string>();
        private readonly Channel<bool> _waits = Channel.CreateUnbounded<bool>();

        public override string? ReadLine()
        {
            _waits.Writer.TryWrite(true);
            return _typed.Reader.WaitToReadAsync().AsTask().GetAwaiter().GetResult() && _typed.Reader.TryRead(out string? line) ? line : null;
        }

        public async Task TypeAsync(string line)
        {
            await _waits.Reader.ReadAsync();
            _typed.Writer.TryWrite(line);

            // The reader is back for more: it has handed this one on.
            await _waits.Reader.ReadAsync();
            _waits.Writer.TryWrite(true);
        }

        protected override void Dispose(bool disposing)
        {
            _typed.Writer.TryComplete();
            base.Dispose(disposing);
        }
    }
}
