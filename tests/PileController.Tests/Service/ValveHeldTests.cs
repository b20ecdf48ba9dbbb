using PileController.Control;
using PileController.Control.Decisions;
using PileController.Control.Modes;
using PileController.Control.Readings;
using PileController.Service;

namespace PileController.Tests.Service;

public class ValveHeldTests
{
    private static readonly TimeSpan Tick = TimeSpan.FromSeconds(10);
    private static readonly TakeByHand Shut = new(Actuator.Valve, 0, 3_600_000, "Robin");

    [Fact]
    public void Of_ValveHeldShutWithThePumpOff_IsHeldThoughAllThatIsToldIsSafe()
    {
        Decision decision = Decide(1, Shut);

        Assert.Equal((Mode.ByHand, Outputs.Safe), (decision.Mode, decision.Outputs));
        Assert.True(ValveHeld.Of(decision));
    }

    [Fact]
    public void Of_SomethingElseByHand_IsNotHeld() => Assert.False(ValveHeld.Of(Decide(1, Shut with { Actuator = Actuator.Pump })));

    [Fact]
    public void Of_NothingByHand_IsNotHeld() => Assert.False(ValveHeld.Of(Decide(1)));

    [Fact]
    public void Of_LockedOff_IsNotHeld() => Assert.False(ValveHeld.Of(Decide(1, Shut, new SetServicing(true))));

    [Fact]
    public void Of_AnInterlockHoldsTheWater_IsNotHeldSinceThatOutranksAPerson()
    {
        Decision decision = Decide(8, Shut);

        Assert.Equal((Mode.ByHand, Outputs.Safe), (decision.Mode, decision.Outputs));
        Assert.False(ValveHeld.Of(decision));
    }

    [Fact]
    public async Task Loop_ValveTakenByHandAndGivenBack_TellsTheRigWhatIsHeld()
    {
        using LoopBench bench = new(Controller.Step);
        await bench.StartAsync();
        await bench.ToldAsync(1);
        Assert.False(bench.Rig.ToldHeld);

        bench.Inbox.TryPost(Shut, out _);
        await bench.AdvanceAsync(Tick);
        await bench.ToldAsync(2);
        Assert.Equal((Outputs.Safe, true), (bench.Rig.Told, bench.Rig.ToldHeld));

        bench.Inbox.TryPost(new ReleaseHand(null), out _);
        await bench.AdvanceAsync(Tick);
        await bench.ToldAsync(3);
        Assert.Equal((Outputs.Safe, false), (bench.Rig.Told, bench.Rig.ToldHeld));

        await bench.Loop.StopAsync(CancellationToken.None);
        Assert.False(bench.Rig.ToldHeld);
    }

    // A house too warm for its interlock's minute holds all draw off.
    private static Decision Decide(int ticks, params Command[] commands)
    {
        RigReadings warm = RigReadings.None.With(Channel.House, Reading.FromValue(Channel.House, 36)).With(Channel.Outside, Reading.FromValue(Channel.Outside, 10));
        Memory memory = Memory.Fresh;
        Decision decision = null!;
        for (int tick = 1; tick <= ticks; tick++)
        {
            (decision, memory) = Controller.Step(new ControlSettings(), memory, warm, tick == 1 ? commands : [], new Instant(tick * 10_000L, tick * 10_000L, 0));
        }

        return decision;
    }
}
