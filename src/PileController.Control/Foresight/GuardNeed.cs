namespace PileController.Control.Foresight;

/// <summary>What the frost guard may come to take of the heap's store; see <see cref="GuardRule"/>.</summary>
/// <param name="Joules">Heat that has to be in store for it, J, 0 or more.</param>
/// <param name="LookedAtMonotonicMilliseconds">When it was found, monotonic; -1 before the first time.</param>
public readonly record struct GuardNeed(double Joules, long LookedAtMonotonicMilliseconds)
{
    /// <summary>Nothing found yet.</summary>
    public static GuardNeed Fresh => new(0, -1);
}
