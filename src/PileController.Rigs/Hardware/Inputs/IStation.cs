namespace PileController.Rigs.Hardware.Inputs;

/// <summary>One device of a bus. Asking it blocks; the bus's own thread does so.</summary>
internal interface IStation
{
    /// <summary>Asks the device once more.</summary>
    /// <returns>One answer for each of its channels, in a fixed order. Nothing is ever thrown.</returns>
    IReadOnlyList<Measured> Ask();

    /// <summary>True when it is looked at every second between the ticks, because what it measures comes and goes.</summary>
    bool WantsGlances => false;

    /// <summary>Looks at the device between two ticks; what was seen goes into the next answers. Nothing is ever thrown.</summary>
    void Glance()
    {
    }
}
