using PileController.Control.Readings;
using PileController.Rigs.Faults;

namespace PileController.Rigs.Simulated;

/// <summary>What the faults now do to the plant's side of the actuators.</summary>
/// <param name="PumpDead">The pump does not turn, and so takes no power.</param>
/// <param name="ValveJammed">The valve stays where it is.</param>
/// <param name="FlowShareLost">Share of the loop's passage that is blocked, 0 to 1.</param>
/// <param name="TakenOut">The probes that sit in something else, and what it has, °C; null for none.</param>
internal readonly record struct PlantFault(bool PumpDead, bool ValveJammed, double FlowShareLost, IReadOnlyDictionary<Channel, double>? TakenOut);

/// <summary>Reads the board once for each change of it, so that a tick costs one comparison.</summary>
internal sealed class PlantFaults(FaultBoard board)
{
    private IReadOnlyList<Fault>? _seen;
    private PlantFault _now;

    /// <summary>What the board's faults do now.</summary>
    public PlantFault Now
    {
        get
        {
            IReadOnlyList<Fault> active = board.Active;
            if (!ReferenceEquals(active, _seen))
            {
                _now = Of(active);
                _seen = active;
            }

            return _now;
        }
    }

    private static PlantFault Of(IReadOnlyList<Fault> active) => new(
        active.Any(fault => fault.Kind == FaultKind.DeadPump),
        active.Any(fault => fault.Kind == FaultKind.ValveJammed),
        active.Where(fault => fault.Kind == FaultKind.BlockedLine).Select(fault => fault.Size).DefaultIfEmpty(0).Max(),
        active.Any(fault => fault.Kind == FaultKind.TakenOut)
            ? active.Where(fault => fault.Kind == FaultKind.TakenOut).ToDictionary(fault => fault.Channel!.Value, fault => fault.Size)
            : null);
}
