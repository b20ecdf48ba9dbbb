using PileController.Control;
using PileController.Control.Readings;
using PileController.Rigs.Faults;
using PileController.Rigs.Simulated;

namespace PileController.Rigs.Tests.Simulated;

/// <summary>A probe that was taken out of its place.</summary>
public sealed class ProbePlacesTests : IAsyncDisposable
{
    private readonly SimulatedRig _rig = new(new FakePlant(), new RigSettings(), 30);

    public ValueTask DisposeAsync() => _rig.DisposeAsync();

    [Theory]
    [InlineData(33)]
    [InlineData(-20)]
    public void Read_ProbeTakenOut_FollowsWhatItSitsInWithItsOwnLagAndError(double celsius)
    {
        double before = Value(Channel.Supply);
        double other = Value(Channel.Return);
        _rig.Faults.Add(new Fault(FaultKind.TakenOut, Channel.Supply, celsius));

        _rig.Advance(10);
        double soon = Value(Channel.Supply);
        for (int i = 0; i < 30; i++)
        {
            _rig.Advance(10);
        }

        // Half of the way after 10 s of a lag of 15 s: 1 − e^(−10/15) = 0.487.
        Assert.InRange((soon - before) / (celsius - before), 0.4, 0.6);
        Assert.InRange(Value(Channel.Supply), celsius - 0.6, celsius + 0.6);
        Assert.InRange(Value(Channel.Return), other - 0.3, other + 0.3);
    }

    [Fact]
    public void Read_ProbePutBack_FollowsThePlantAgain()
    {
        double before = Value(Channel.Supply);
        _rig.Faults.Add(new Fault(FaultKind.TakenOut, Channel.Supply, 33));
        _rig.Advance(100);
        _rig.Faults.Clear();
        for (int i = 0; i < 30; i++)
        {
            _rig.Advance(10);
        }

        Assert.InRange(Value(Channel.Supply), before - 0.3, before + 0.3);
    }

    private double Value(Channel channel) => _rig.Read(new Instant(0, 0, 0))[channel].ValueOf(channel);
}
