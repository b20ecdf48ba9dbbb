using PileController.Rigs.Faults;

namespace PileController.Panel;

/// <summary>Puts faults into a simulated rig and takes them out. Called from any thread.</summary>
public interface IFaultSwitches
{
    /// <summary>The faults that stand.</summary>
    IReadOnlyList<Fault> Active { get; }

    /// <summary>Puts a fault in; one of the same kind and channel is replaced.</summary>
    void Add(Fault fault);

    /// <summary>Takes a fault out.</summary>
    void Remove(Fault fault);

    /// <summary>Takes all out.</summary>
    void Clear();
}
