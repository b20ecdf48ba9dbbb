using PileController.Control;
using PileController.Control.Decisions;
using PileController.Control.Readings;
using PileController.Records;
using PileController.Records.Checking;
using PileController.Tests.Support;
using PileController.Whys;

namespace PileController.Tests.Whys;

public class WhatIfsTests
{
    private static readonly ControlSettings Settings = new();

    [Fact]
    public void Of_APumpHeldByHand_WouldBeOtherwiseWithNothingByHand()
    {
        RecalledTick tick = Tick(new TakeByHand(Actuator.Pump, 1, 600_000, "Robin"), 3);
        (Decision made, _) = Again(Settings, tick);

        WhatIf found = Assert.Single(WhatIfs.Of(Settings, tick, made), one => one.What == Otherwise.NothingByHand);

        Assert.NotEqual(made.Mode, found.Mode);
        Assert.True(found.Outputs.PumpDuty < made.Outputs.PumpDuty);
    }

    [Fact]
    public void Of_NothingHeld_SaysNothingOfHands()
    {
        RecalledTick tick = Tick(null, 3);
        (Decision made, _) = Again(Settings, tick);

        Assert.DoesNotContain(WhatIfs.Of(Settings, tick, made), one => one.What == Otherwise.NothingByHand);
    }

    [Fact]
    public void Of_Each_IsWhatTheStepItselfDecides()
    {
        RecalledTick tick = Tick(null, 500);
        (Decision made, _) = Again(Settings, tick);
        (Decision lower, _) = Again(Settings with { HeapFloorC = Settings.HeapFloorC + 2 }, tick);

        WhatIf? found = WhatIfs.Of(Settings, tick, made).FirstOrDefault(one => one.What == Otherwise.FloorHigher);

        Assert.Equal(Math.Abs(lower.GrantWatts - made.GrantWatts) >= 10 || lower.Curb != made.Curb, found is not null);
        Assert.True(found is null || found.GrantWatts == lower.GrantWatts);
    }

    [Fact]
    public void Of_AProbeThatIsNotBelieved_IsNotMoved()
    {
        RecalledTick tick = Tick(null, 5);
        Reading[] blind = tick.Raw.AsSpan().ToArray();
        blind[(int)Channel.House] = new Reading(0, ReadingQuality.NoAnswer, 0);
        tick = tick with { Raw = new RigReadings(blind) };
        (Decision made, _) = Again(Settings, tick);

        Assert.DoesNotContain(WhatIfs.Of(Settings, tick, made), one => one.What is Otherwise.HouseWarmer or Otherwise.HouseColder);
    }

    private static (Decision Decision, Memory Memory) Again(ControlSettings settings, RecalledTick tick) =>
        Controller.Step(settings, tick.Before, tick.Raw, tick.Commands, tick.At);

    // A few ticks of made-up readings; the command comes at the first.
    private static RecalledTick Tick(Command? command, int ticks)
    {
        Memory memory = Memory.Fresh;
        for (int i = 0; ; i++)
        {
            Instant at = new(PanelHost.Begins.ToUnixTimeMilliseconds() + (i * 10_000L), i * 10_000L, -300);
            RigReadings readings = MadeUp.Readings(at);
            IReadOnlyList<Command> commands = i == 0 && command is not null ? [command] : [];
            if (i == ticks - 1)
            {
                return new RecalledTick(new RecordOrigin("", "", ""), memory, readings, commands, at);
            }

            (_, memory) = Controller.Step(Settings, memory, readings, commands, at);
        }
    }
}
