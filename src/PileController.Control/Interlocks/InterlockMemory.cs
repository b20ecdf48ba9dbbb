namespace PileController.Control.Interlocks;

/// <summary>What is remembered of one interlock.</summary>
/// <param name="SinceMilliseconds">Since when its limit is passed, monotonic; -1 when it is not.</param>
/// <param name="Acting">Whether it acts.</param>
/// <param name="Latched">Whether it has tripped and not been cleared.</param>
public readonly record struct InterlockMemory(long SinceMilliseconds, bool Acting, bool Latched)
{
    /// <summary>Nothing seen yet.</summary>
    public static InterlockMemory Fresh => new(-1, false, false);

    /// <summary>What is remembered of one row: nothing where the memory does not reach to it.</summary>
    public static InterlockMemory Of(InterlockMemory[] memory, int row) => row < memory.Length ? memory[row] : Fresh;
}
