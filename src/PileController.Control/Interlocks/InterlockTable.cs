namespace PileController.Control.Interlocks;

/// <summary>The interlocks, as rows of data, in the order in which their verdicts are told.</summary>
public static class InterlockTable
{
    /// <summary>All rows.</summary>
    public static IReadOnlyList<Interlock> All { get; } = [];
}
