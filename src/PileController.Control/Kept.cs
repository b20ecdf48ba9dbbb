namespace PileController.Control;

/// <summary>
/// A value that stays as it is for many ticks. It is handed from memory to memory as the same object until it changes, so
/// that a tick that changes nothing of it makes nothing of it.
/// </summary>
/// <param name="Value">The value.</param>
internal sealed record Kept<T>(T Value)
    where T : struct, IEquatable<T>
{
    /// <summary>This, where it holds the value already.</summary>
    public Kept<T> As(in T value) => Value.Equals(value) ? this : new Kept<T>(value);
}
