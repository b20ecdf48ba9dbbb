namespace PileController.Physics.Sky.Weather;

/// <summary>A weather file that cannot be used. The message lists the faults, each with file, line, column, value and what is allowed.</summary>
public sealed class WeatherFileException : Exception
{
    /// <summary>Makes the exception from its faults.</summary>
    /// <param name="faults">One sentence each, one at least.</param>
    public WeatherFileException(IReadOnlyList<string> faults)
        : base(string.Join("\n", faults)) => Faults = faults;

    /// <summary>The faults, one sentence each.</summary>
    public IReadOnlyList<string> Faults { get; }
}
