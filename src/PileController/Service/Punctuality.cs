namespace PileController.Service;

/// <summary>Says whether ticks come on time, by true time.</summary>
/// <param name="trueTick">Length of a tick in true time.</param>
public sealed class Punctuality(TimeSpan trueTick)
{
    // In a sped-up demo a tick lasts a few milliseconds; a pause of the machine is no fault there.
    private static readonly TimeSpan LeastPatience = TimeSpan.FromSeconds(3);

    /// <summary>How old the newest tick may be: three ticks, at least three seconds.</summary>
    public TimeSpan Patience => trueTick * 3 > LeastPatience ? trueTick * 3 : LeastPatience;

    /// <summary>Whether the newest tick is young enough; false before the first.</summary>
    /// <param name="age">True time since it was told, or null before the first.</param>
    public bool OnTime(TimeSpan? age) => age is { } since && since <= Patience;
}
