using PileController.Control.Readings;

namespace PileController.Rigs.Tests.Ports;

/// <summary>One probe of a rig, real or simulated, whose truth a test sets.</summary>
internal interface IPortBench : IDisposable
{
    /// <summary>Makes the rig with that one probe.</summary>
    IRig Make();

    /// <summary>Sets the truth and lets the probe follow it.</summary>
    Task SetAsync(IRig rig, double value);

    /// <summary>Reads the probe at the next tick.</summary>
    Task<Reading> ReadAsync(IRig rig);

    /// <summary>Cuts the probe off.</summary>
    void Break();
}
