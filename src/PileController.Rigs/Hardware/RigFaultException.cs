namespace PileController.Rigs.Hardware;

/// <summary>A device of the rig that must work does not: an output that cannot be written, a chip that is not there.</summary>
public sealed class RigFaultException : Exception
{
    /// <summary>Makes one.</summary>
    /// <param name="message">What does not work and what to look at.</param>
    /// <param name="inner">What was thrown below, or null.</param>
    public RigFaultException(string message, Exception? inner = null)
        : base(message, inner)
    {
    }
}
