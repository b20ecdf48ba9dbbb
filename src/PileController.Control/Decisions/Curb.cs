namespace PileController.Control.Decisions;

/// <summary>The one thing that now limits the grant.</summary>
public enum Curb
{
    /// <summary>Nothing limits it: the house gets what it wants.</summary>
    None = 0,

    /// <summary>The house wants no heat.</summary>
    NoWant,

    /// <summary>The heap cannot bear more (means).</summary>
    Means,

    /// <summary>The heap has not lit yet.</summary>
    NotLit,

    /// <summary>The heap's floor: it is left to recover.</summary>
    Floor,

    /// <summary>Coil and ducts can carry no more, or for comfort no more as gently as they go.</summary>
    Reach,

    /// <summary>A minimum rest or run time.</summary>
    Rest,

    /// <summary>The battery.</summary>
    Power,

    /// <summary>The loop is being primed.</summary>
    Priming,

    /// <summary>An interlock.</summary>
    Interlock,

    /// <summary>A person has it by hand.</summary>
    ByHand,

    /// <summary>Probes that cannot be trusted.</summary>
    Probes,

    /// <summary>Heat is kept for a colder hour.</summary>
    Saving,
}
