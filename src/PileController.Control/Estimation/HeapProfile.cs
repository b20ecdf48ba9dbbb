namespace PileController.Control.Estimation;

/// <summary>What is believed of the heap along its radius, for a drawing.</summary>
/// <param name="RadiusM">Distance of each ring's middle from the axis, from the middle out, m.</param>
/// <param name="Celsius">Temperature of each ring, °C.</param>
public sealed record HeapProfile(IReadOnlyList<double> RadiusM, IReadOnlyList<double> Celsius)
{
    /// <summary>The profile a memory holds; null before the observer has begun.</summary>
    /// <param name="shape">The heap as the observer cuts it.</param>
    /// <param name="memory">What a tick handed on.</param>
    public static HeapProfile? Of(HeapShape shape, Memory memory) => memory.Estimator.Belief is { Fits: true } belief
        ? new HeapProfile(
            [.. Enumerable.Range(0, HeapShape.Rings).Select(shape.CentreM)], [.. belief.Mean.Take(HeapShape.Rings)])
        : null;
}
