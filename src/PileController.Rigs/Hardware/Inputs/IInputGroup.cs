using PileController.Control.Readings;

namespace PileController.Rigs.Hardware.Inputs;

/// <summary>Inputs of a real rig that are read in one way: the 1-Wire buses, the I2C buses, the pulse lines, the switches.</summary>
/// <threadsafety>One reader at a time.</threadsafety>
internal interface IInputGroup : IDisposable
{
    /// <summary>Writes what is known at the deadline into its channels' places, and nothing elsewhere.</summary>
    /// <param name="readings">One place a channel.</param>
    /// <param name="cancellation">Ends the wait.</param>
    Task ReadAsync(Reading[] readings, CancellationToken cancellation);
}
