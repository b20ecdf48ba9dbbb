namespace PileController.Rigs.Hardware.Loads;

/// <summary>Does something to an output and makes a sentence of what goes wrong.</summary>
internal static class Deed
{
    /// <summary>What went wrong, or null.</summary>
    /// <param name="deed">What is done.</param>
    /// <param name="name">The actuator.</param>
    /// <param name="place">The output.</param>
    /// <param name="word">What is done, for "cannot be …".</param>
    public static RigFaultException? Try(Action deed, string name, string place, string word)
    {
        try
        {
            deed();
            return null;
        }
        catch (Exception error)
        {
            return new RigFaultException($"The {name}'s {place} cannot be {word}: {error.Message}", error);
        }
    }
}
