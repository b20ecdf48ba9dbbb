using PileController.Commissioning;
using PileController.Commissioning.Running;
using PileController.Control.Readings;
using PileController.Rigs.Faults;
using PileController.Rigs.Simulated;
using PileController.Settings;

namespace PileController.Tests.Commissioning.Running;

/// <summary>The tests on the simulated rig find the errors its parts were born with, within what they say of themselves.</summary>
public sealed class SimulatedTestRigTests
{
    private static readonly PileSettings Demo = PileSettings.AlderBank;

    private static async Task<IReadOnlyList<Outcome>> FoundAsync(string id, Channel[] baths, params Fault[] faults) => (await WalkedAsync(id, baths, faults)).Found();

    private static async Task<Walk> WalkedAsync(string id, Channel[] baths, params Fault[] faults)
    {
        await using SimulatedTestRig rig = new(Demo);
        foreach (Fault fault in faults)
        {
            rig.Holding.Rig.Faults.Add(fault);
        }

        return await Leading.RunAsync(Catalogue.Of(id, Demo, new TestAsk()), rig, new SimulatedGrower(rig, Demo, baths, _ => { }), "Robin", CancellationToken.None);
    }

    [Fact]
    public async Task Ice_SimulatedProbes_FindsTheOffsetsTheyWereBornWith()
    {
        IReadOnlyList<Outcome> found = await FoundAsync("ice", [Channel.Supply, Channel.Return]);

        Assert.All(found.Zip((Channel[])[Channel.Supply, Channel.Return]), pair =>
            Assert.InRange(pair.First.Figure!.Value + ProbeErrors.OffsetOf(pair.Second, 1), -pair.First.Uncertainty!.Value, pair.First.Uncertainty.Value));
    }

    [Fact]
    public async Task Pair_SimulatedProbes_FindsWhatTheyDifferBy()
    {
        Outcome found = Assert.Single(await FoundAsync("pair", [Channel.Supply, Channel.Return]));

        double apart = ProbeErrors.OffsetOf(Channel.Supply, 1) - ProbeErrors.OffsetOf(Channel.Return, 1);
        Assert.InRange(found.Figure!.Value, apart - found.Uncertainty!.Value, apart + found.Uncertainty.Value);
    }

    [Fact]
    public async Task Bucket_SimulatedMeter_FindsItsTruePulses()
    {
        Outcome found = Assert.Single(await FoundAsync("bucket", []));

        double pulses = 450 * ProbeErrors.GainOf(Channel.Flow, 1);
        Assert.Equal(Soundness.Sound, found.Verdict);
        Assert.InRange(found.Figure!.Value, pulses - found.Uncertainty!.Value, pulses + found.Uncertainty.Value);
    }

    [Theory]
    [InlineData(Channel.Supply)]
    [InlineData(Channel.HeapCore)]
    [InlineData(Channel.Outside)]
    public async Task Find_SimulatedHand_FindsTheProbeInIt(Channel channel) =>
        Assert.Equal((ChannelTable.Of(channel).Name, Soundness.Sound), (await FoundAsync("find", [channel])) is [var one] ? (one.Subject, one.Verdict) : default);

    [Fact]
    public async Task Find_TwoProbesInTheHand_IsAmbiguous() =>
        Assert.Equal(Soundness.Doubtful, Assert.Single(await FoundAsync("find", [Channel.Supply, Channel.Return])).Verdict);

    [Theory]
    [InlineData(FaultKind.DeadPump, "given up")]
    [InlineData(FaultKind.BlockedLine, "no water moved")]
    public async Task Exercise_PumpThatDoesNothing_IsStoppedByItsInterlockOrFails(FaultKind kind, string words)
    {
        IReadOnlyList<Outcome> found = await FoundAsync("exercise", [], new Fault(kind, Size: kind == FaultKind.BlockedLine ? 1 : 0));

        Assert.Equal(Soundness.Failed, found[0].Verdict);
        Assert.True(found[0].Sentence.Contains(words, StringComparison.OrdinalIgnoreCase) || found[0].Sentence.Contains("given up", StringComparison.Ordinal), found[0].Sentence);
    }

    [Fact]
    public async Task Exercise_JammedValve_FailsAndNothingElseDoes()
    {
        IReadOnlyList<Outcome> found = await FoundAsync("exercise", [], new Fault(FaultKind.Stuck, Channel.BlowerPower));

        Assert.Equal([Soundness.Sound, Soundness.Sound, Soundness.Failed], found.Select(one => one.Verdict));
    }

    [Fact]
    public async Task AnyTest_WhenItIsOver_HoldsNothingByHand()
    {
        foreach (string id in Catalogue.Ids)
        {
            await using SimulatedTestRig rig = new(Demo);
            await Leading.RunAsync(Catalogue.Of(id, Demo, new TestAsk()), rig, new SimulatedGrower(rig, Demo, [Channel.Supply], _ => { }), "Robin", CancellationToken.None);

            Assert.Empty(rig.Holding.Memory.Hands);
        }
    }
}
