namespace PileController.Control.Interlocks;

/// <summary>The moments by which interlocks count, monotonic, ms, and what explains that no water moves.</summary>
/// <param name="NowMilliseconds">This tick.</param>
/// <param name="BeforeMilliseconds">The tick before: when what was last seen was still so.</param>
/// <param name="PumpSinceMilliseconds">Since when the pump runs or rests.</param>
/// <param name="ValveIsShut">Whether the valve was told to be shut, by hand, while the pump runs.</param>
internal readonly record struct Moments(long NowMilliseconds, long BeforeMilliseconds, long PumpSinceMilliseconds, bool ValveIsShut);
