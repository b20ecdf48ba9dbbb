namespace PileController.Rigs.Hardware.Ports;

/// <summary>
/// One way out of the board: a line, or a channel that gives a share of each period. Safe from its first instant, and proven
/// by reading back wherever the device can be read.
/// </summary>
internal interface IOutput : IDisposable
{
    /// <summary>Where it is, for a sentence: "line 17".</summary>
    string Place { get; }

    /// <summary>Puts out a share of full.</summary>
    /// <param name="share">0 to 1; a line knows 0 and 1 only.</param>
    /// <exception cref="Exception">It could not be written, or what was read back is something else.</exception>
    void Write(double share);

    /// <summary>What the device says that it puts out, 0 to 1.</summary>
    /// <exception cref="Exception">It cannot be read.</exception>
    double Read();

    /// <summary>Puts out nothing, in the device's surest way.</summary>
    /// <exception cref="Exception">It could not be written, or was not obeyed.</exception>
    void MakeSafe();
}
