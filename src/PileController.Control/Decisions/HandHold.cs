namespace PileController.Control.Decisions;

/// <summary>One actuator held by hand.</summary>
/// <param name="Actuator">Which.</param>
/// <param name="Value">0 to 1.</param>
/// <param name="UntilMonotonicMilliseconds">When it ends, on the monotonic clock of <see cref="Instant"/>.</param>
/// <param name="Who">Who took it.</param>
public sealed record HandHold(Actuator Actuator, double Value, long UntilMonotonicMilliseconds, string Who);
