using PileController.Control.Modes;

namespace PileController.Control.Tests.Modes;

public sealed class ModeTableTests
{
    // Every move there is; what is not here stays where it is.
    private static readonly (Mode From, Trigger By, Mode To)[] Moves =
    [
        (Mode.Standby, Trigger.WaterAsked, Mode.Priming),
        (Mode.Standby, Trigger.AirAsked, Mode.Drawing),
        (Mode.Standby, Trigger.FloorNear, Mode.Recovering),
        (Mode.Standby, Trigger.FrostNear, Mode.FrostGuard),
        (Mode.Standby, Trigger.HandTaken, Mode.ByHand),
        (Mode.Standby, Trigger.ServicingBegun, Mode.Servicing),
        (Mode.Standby, Trigger.Trip, Mode.Tripped),
        (Mode.Priming, Trigger.FlowProven, Mode.Drawing),
        (Mode.Priming, Trigger.DrawEnded, Mode.Standby),
        (Mode.Priming, Trigger.FloorNear, Mode.Recovering),
        (Mode.Priming, Trigger.HandTaken, Mode.ByHand),
        (Mode.Priming, Trigger.ServicingBegun, Mode.Servicing),
        (Mode.Priming, Trigger.Trip, Mode.Tripped),
        (Mode.Drawing, Trigger.WaterAsked, Mode.Priming),
        (Mode.Drawing, Trigger.DrawEnded, Mode.Standby),
        (Mode.Drawing, Trigger.FloorNear, Mode.Recovering),
        (Mode.Drawing, Trigger.FrostNear, Mode.FrostGuard),
        (Mode.Drawing, Trigger.HandTaken, Mode.ByHand),
        (Mode.Drawing, Trigger.ServicingBegun, Mode.Servicing),
        (Mode.Drawing, Trigger.Trip, Mode.Tripped),
        (Mode.Recovering, Trigger.Recovered, Mode.Standby),
        (Mode.Recovering, Trigger.FrostNear, Mode.FrostGuard),
        (Mode.Recovering, Trigger.HandTaken, Mode.ByHand),
        (Mode.Recovering, Trigger.ServicingBegun, Mode.Servicing),
        (Mode.Recovering, Trigger.Trip, Mode.Tripped),
        (Mode.FrostGuard, Trigger.FrostGone, Mode.Standby),
        (Mode.FrostGuard, Trigger.HandTaken, Mode.ByHand),
        (Mode.FrostGuard, Trigger.ServicingBegun, Mode.Servicing),
        (Mode.FrostGuard, Trigger.Trip, Mode.Tripped),
        (Mode.ByHand, Trigger.HandEnded, Mode.Standby),
        (Mode.ByHand, Trigger.ServicingBegun, Mode.Servicing),
        (Mode.ByHand, Trigger.Trip, Mode.Tripped),
        (Mode.Servicing, Trigger.ServicingEnded, Mode.Standby),
        (Mode.Servicing, Trigger.Trip, Mode.Tripped),
        (Mode.Tripped, Trigger.TripsCleared, Mode.Standby),
    ];

    public static TheoryData<Mode, Trigger> Matrix
    {
        get
        {
            TheoryData<Mode, Trigger> all = [];
            foreach (Mode mode in Enum.GetValues<Mode>())
            {
                foreach (Trigger trigger in Enum.GetValues<Trigger>())
                {
                    all.Add(mode, trigger);
                }
            }

            return all;
        }
    }

    [Theory]
    [MemberData(nameof(Matrix))]
    public void After_AnyModeAndTrigger_LeadsWhereTheTableSays(Mode mode, Trigger trigger)
    {
        Mode[] to = [.. Moves.Where(m => m.From == mode && m.By == trigger).Select(m => m.To)];

        Assert.Equal(to.Length > 0, ModeTable.Has(mode, trigger));
        Assert.Equal(to.Length > 0 ? to[0] : mode, ModeTable.After(mode, trigger));
    }

    [Fact]
    public void After_Trip_ReachesTrippedFromEveryMode() =>
        Assert.All(Enum.GetValues<Mode>(), mode => Assert.Equal(Mode.Tripped, ModeTable.After(mode, Trigger.Trip)));

    [Fact]
    public void After_AnyTrigger_EveryModeCanComeBackToStandby() => Assert.All(
        Enum.GetValues<Mode>(),
        mode => Assert.Contains(Mode.Standby, Reached(mode)));

    [Fact]
    public void Diagram_IsTheApprovedOne()
    {
        string approved = File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "Modes", "ModeDiagram.approved.txt"));

        Assert.Equal(approved.ReplaceLineEndings("\n").TrimEnd(), ModeTable.Diagram().ReplaceLineEndings("\n").TrimEnd());
    }

    private static HashSet<Mode> Reached(Mode from)
    {
        HashSet<Mode> reached = [from];
        Queue<Mode> open = new([from]);
        while (open.TryDequeue(out Mode mode))
        {
            foreach (Trigger trigger in Enum.GetValues<Trigger>())
            {
                if (reached.Add(ModeTable.After(mode, trigger)))
                {
                    open.Enqueue(ModeTable.After(mode, trigger));
                }
            }
        }

        return reached;
    }
}
