using PileController.Panel;
using PileController.Rigs.Faults;

namespace PileController.Serving;

/// <summary>The simulated rig's fault board, as the panel switches it.</summary>
internal sealed class FaultSwitches(FaultBoard board) : IFaultSwitches
{
    /// <inheritdoc/>
    public IReadOnlyList<Fault> Active => board.Active;

    /// <inheritdoc/>
    public void Add(Fault fault) => board.Add(fault);

    /// <inheritdoc/>
    public void Remove(Fault fault) => board.Remove(fault.Kind, fault.Channel);

    /// <inheritdoc/>
    public void Clear() => board.Clear();
}
