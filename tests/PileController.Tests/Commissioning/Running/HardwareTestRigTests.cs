using PileController.Commissioning;
using PileController.Commissioning.Running;
using PileController.Control.Decisions;
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

        await using HardwareTestRig opened = await HardwareTestRig.OpenAsync(rig, new FakeRecord(), Fast, TimeProvider.System, CancellationToken.None);

        Assert.Equal(["safe"], rig.Calls);
    }

    [Fact]
    public async Task Tick_PumpTakenByHand_GoesThroughTheOrdinaryTickIntoTheRecord()
    {
        FakeRig rig = new() { Reads = MadeUp.Readings };
        FakeRecord record = new();
        HardwareTestRig opened = await HardwareTestRig.OpenAsync(rig, record, Fast, TimeProvider.System, CancellationToken.None);

        Look look = await opened.TickAsync([new TakeByHand(Actuator.Pump, 0.5, 60_000, "Robin")], CancellationToken.None);

        Assert.Equal(0.5, look.Outputs.PumpDuty);
        Assert.Equal(0.5, rig.Told.PumpDuty);
        await opened.DisposeAsync();
        Assert.Equal(Outputs.Safe, rig.Told);
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
}
