namespace PileController.Control.Foresight;

/// <summary>One way to draw in the hours ahead, of the few the horizon weighs.</summary>
/// <param name="Comfort">Whether heat is given for comfort.</param>
/// <param name="HeadKelvin">How far above its minimum the house is held against frost, K: more banks heat in floor and tank.</param>
public readonly record struct Course(bool Comfort, double HeadKelvin)
{
    /// <summary>The minimum is held from a little above it, K: the loop answers late.</summary>
    public const double UsualHeadKelvin = 1.0;

    // Where heat will be short every tenth of a degree counts: the house is held close above its minimum, and dips. Closer
    // still some K·h more would be saved, and in mild winters night after night would miss the minimum by a brush. So it is
    // held at the minimum itself only in a spell, whose nights will miss it by far (both from seasons of the simulated holding).
    private const double ThriftyHeadKelvin = 0.4;
    private const double SpellHeadKelvin = 0;

    // Heat banked ahead of a spell that coil and ducts cannot meet in time; more leaks away before it is of use
    // (from seasons of the simulated house).
    private const double BankedHeadKelvin = 3;

    // Nearer than this to its minimum the house waits for nothing: the water in the lines has to be warmed first. Where it is
    // held closer than that, it waits until it has lost a fifth of what it is held above (in a spell, until it is below): with
    // every start urgent a run would begin at the wish itself, and the house swing above it from there. Waiting longer costs
    // nights that miss the minimum by a brush (from seasons of the simulated holding).
    private const double MostUrgentKelvin = 0.5;
    private const double UrgentShare = 0.8;

    /// <summary>What is done where nothing can be foretold.</summary>
    public static Course Usual => new(true, UsualHeadKelvin);

    /// <summary>Without comfort, the house held close above its minimum: heat will be short in the weeks to come.</summary>
    public static Course Thrifty => new(false, ThriftyHeadKelvin);

    /// <summary>How the thrifty course is followed in a spell, when even it leaves the house cold: the house is held at its minimum.</summary>
    public static Course Spell => new(false, SpellHeadKelvin);

    /// <summary>Nearer than this to its minimum the house waits for no pause of the pump, K.</summary>
    public double UrgentKelvin => Math.Min(MostUrgentKelvin, UrgentShare * HeadKelvin);

    /// <summary>By how much later than usual a start is urgent, and so about by how much deeper the house swings, K.</summary>
    public double CloserKelvin => MostUrgentKelvin - UrgentKelvin;

    /// <summary>All that are weighed; <see cref="Spell"/> stands with <see cref="Thrifty"/>.</summary>
    public static ReadOnlySpan<Course> All => Table;

    private static readonly Course[] Table =
    [
        Usual,
        new(false, UsualHeadKelvin),
        Thrifty,
        new(false, BankedHeadKelvin),
    ];
}
