namespace PileController.Control.Interlocks;

/// <summary>The moments by which interlocks count, monotonic, ms.</summary>
/// <param name="NowMilliseconds">This tick.</param>
/// <param name="BeforeMilliseconds">The tick before: when what was last seen was still so.</param>
/// <param name="PumpSinceMilliseconds">Since when the pump runs or rests.</param>
internal readonly record struct Moments(long NowMilliseconds, long BeforeMilliseconds, long PumpSinceMilliseconds);
