namespace PileController.Alarms;

/// <summary>
/// Whether what an alarm is about holds at a tick; null when it cannot be told, and then nothing rises and nothing ends.
/// </summary>
/// <param name="facts">The tick.</param>
/// <param name="standing">Whether the alarm stands already: its limit is then moved by the dead-band.</param>
public delegate bool? AlarmSign(AlarmFacts facts, bool standing);

/// <summary>
/// One row of the alarm table. A row is worth having only where a person can do something about it: that is its
/// <see cref="Action"/>.
/// </summary>
/// <param name="Key">Short name, stable for ever: it is kept in files and told on the wire.</param>
/// <param name="Name">What people read first.</param>
/// <param name="Priority">How much it matters.</param>
/// <param name="Group">Alarms among which the first is marked.</param>
/// <param name="Sign">Whether it holds.</param>
public sealed record AlarmRow(string Key, string Name, AlarmPriority Priority, AlarmGroup Group, AlarmSign Sign)
{
    /// <summary>What it usually comes from.</summary>
    public required string Cause { get; init; }

    /// <summary>What comes of it when nobody acts.</summary>
    public required string Consequence { get; init; }

    /// <summary>What to do, with the cautions that belong to it.</summary>
    public required string Action { get; init; }

    /// <summary>How long the sign must hold before it rises, s.</summary>
    public double DelaySeconds { get; init; }

    /// <summary>Whether it rises at this tick, however much of the delay is left: what it tells of has acted.</summary>
    public Func<AlarmFacts, bool> RisesNow { get; init; } = _ => false;

    /// <summary>
    /// How long the sign may be away before the delay begins anew, s: for what comes and goes. Less than the delay, so that
    /// a single sign raises nothing.
    /// </summary>
    public double BridgeSeconds { get; init; }

    /// <summary>How long the sign must be away before it ends, s: the dead-band in time.</summary>
    public double ClearSeconds { get; init; }

    /// <summary>How far a measure must come back past its limit before it ends, in the measure's unit; 0 for what is yes or no.</summary>
    public double DeadBand { get; init; }

    /// <summary>Unit of <see cref="DeadBand"/>, or empty.</summary>
    public string Unit { get; init; } = "";

    /// <summary>Whether people may come to harm; such an alarm is shelved for a short time only.</summary>
    public bool ProtectsPeople { get; init; }

    /// <summary>Least time after it was told or seen before a standing alarm asks to be seen again, s; 0 for never.</summary>
    public double RemindSeconds { get; init; }

    /// <summary>Whether this is a tick at which it does.</summary>
    public Func<AlarmFacts, bool> Reminds { get; init; } = _ => true;

    /// <summary>Keys of the alarms it follows from: while one of them stands, this one is held back; one that reminds, for a day after it was told.</summary>
    public IReadOnlyList<string> FollowsFrom { get; init; } = [];

    /// <summary>What is the matter at this tick, in a few words; null for nothing more than the cause.</summary>
    public Func<AlarmFacts, string?> Detail { get; init; } = _ => null;

    /// <summary>Longest time it may be shelved, s.</summary>
    public double MostShelvedSeconds => ProtectsPeople ? AlarmHands.MostShelvedOfPeopleSeconds : AlarmHands.MostShelvedSeconds;
}
