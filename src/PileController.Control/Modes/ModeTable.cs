using Stateless;
using Stateless.Graph;

namespace PileController.Control.Modes;

/// <summary>
/// Which mode follows which. The table is written with Stateless, walked once at start and kept as a plain array, so
/// that a tick only looks it up: no machine is shared between threads and nothing is fired inside a decision.
/// </summary>
public static class ModeTable
{
    private static readonly Mode[] Modes = Enum.GetValues<Mode>();
    private static readonly Trigger[] Triggers = Enum.GetValues<Trigger>();
    private static readonly Mode?[,] Next = Walk();

    /// <summary>The mode after a trigger; the same mode when the table has no such move.</summary>
    public static Mode After(Mode mode, Trigger trigger) => Next[(int)mode, (int)trigger] ?? mode;

    /// <summary>Whether the table has such a move.</summary>
    public static bool Has(Mode mode, Trigger trigger) => Next[(int)mode, (int)trigger] is not null;

    /// <summary>The table as a Mermaid state diagram.</summary>
    public static string Diagram() => MermaidGraph.Format(Build(Mode.Standby).GetInfo());

    private static Mode?[,] Walk()
    {
        Mode?[,] next = new Mode?[Modes.Length, Triggers.Length];
        foreach (Mode mode in Modes)
        {
            foreach (Trigger trigger in Triggers)
            {
                StateMachine<Mode, Trigger> machine = Build(mode);
                if (machine.CanFire(trigger))
                {
                    machine.Fire(trigger);
                    next[(int)mode, (int)trigger] = machine.State;
                }
            }
        }

        return next;
    }

    private static StateMachine<Mode, Trigger> Build(Mode initial)
    {
        StateMachine<Mode, Trigger> machine = new(initial);
        machine.Configure(Mode.Standby)
            .Permit(Trigger.WaterAsked, Mode.Priming)
            .Permit(Trigger.AirAsked, Mode.Drawing)
            .Permit(Trigger.FloorNear, Mode.Recovering)
            .Permit(Trigger.FrostNear, Mode.FrostGuard)
            .Permit(Trigger.HandTaken, Mode.ByHand)
            .Permit(Trigger.ServicingBegun, Mode.Servicing)
            .Permit(Trigger.Trip, Mode.Tripped);
        machine.Configure(Mode.Priming)
            .Permit(Trigger.FlowProven, Mode.Drawing)
            .Permit(Trigger.DrawEnded, Mode.Standby)
            .Permit(Trigger.FloorNear, Mode.Recovering)
            .Permit(Trigger.HandTaken, Mode.ByHand)
            .Permit(Trigger.ServicingBegun, Mode.Servicing)
            .Permit(Trigger.Trip, Mode.Tripped);
        machine.Configure(Mode.Drawing)
            .Permit(Trigger.WaterAsked, Mode.Priming)
            .Permit(Trigger.DrawEnded, Mode.Standby)
            .Permit(Trigger.FloorNear, Mode.Recovering)
            .Permit(Trigger.FrostNear, Mode.FrostGuard)
            .Permit(Trigger.HandTaken, Mode.ByHand)
            .Permit(Trigger.ServicingBegun, Mode.Servicing)
            .Permit(Trigger.Trip, Mode.Tripped);
        machine.Configure(Mode.Recovering)
            .Permit(Trigger.Recovered, Mode.Standby)
            .Permit(Trigger.FrostNear, Mode.FrostGuard)
            .Permit(Trigger.HandTaken, Mode.ByHand)
            .Permit(Trigger.ServicingBegun, Mode.Servicing)
            .Permit(Trigger.Trip, Mode.Tripped);
        machine.Configure(Mode.FrostGuard)
            .Permit(Trigger.FrostGone, Mode.Standby)
            .Permit(Trigger.HandTaken, Mode.ByHand)
            .Permit(Trigger.ServicingBegun, Mode.Servicing)
            .Permit(Trigger.Trip, Mode.Tripped);
        machine.Configure(Mode.ByHand)
            .Permit(Trigger.HandEnded, Mode.Standby)
            .Permit(Trigger.ServicingBegun, Mode.Servicing)
            .Permit(Trigger.Trip, Mode.Tripped);
        machine.Configure(Mode.Servicing)
            .Permit(Trigger.ServicingEnded, Mode.Standby)
            .Permit(Trigger.Trip, Mode.Tripped);
        machine.Configure(Mode.Tripped)
            .Permit(Trigger.TripsCleared, Mode.Standby);
        return machine;
    }
}
