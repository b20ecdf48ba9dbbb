namespace PileController.Control;

/// <summary>
/// A value that stays as it is for many ticks. It is handed from memory to memory as the same object until it changes, so
/// that a tick that changes nothing of it makes nothing of it.
/// </summary>
/// <param name="value">The value.</param>
internal sealed class Kept<T>(in T value)
    where T : struct, IEquatable<T>
{
    private readonly T _value = value;

    /// <summary>The value, not copied.</summary>
    public ref readonly T Value => ref _value;

    /// <summary>This, where it holds the value already.</summary>
    public Kept<T> As(in T value) => _value.Equals(value) ? this : new Kept<T>(value);
}
