namespace PileController.Control.Foresight;

/// <summary>One way to draw in the hours ahead, of the few the horizon weighs.</summary>
/// <param name="Comfort">Whether heat is given for comfort.</param>
/// <param name="Air">Whether the ducts help when the water alone does not meet what frost asks.</param>
/// <param name="HeadKelvin">How far above its minimum the house is held against frost, K: more banks heat in floor and tank.</param>
public readonly record struct Course(bool Comfort, bool Air, double HeadKelvin)
{
    /// <summary>The minimum is held from a little above it, K: the loop answers late.</summary>
    public const double UsualHeadKelvin = 1.0;

    // Where heat will be short every tenth of a degree counts: the house is held close above its minimum, and dips.
    private const double ThriftyHeadKelvin = 0.5;

    // Heat banked ahead of a spell that coil and ducts cannot meet in time; more leaks away before it is of use
    // (from seasons of the simulated house).
    private const double BankedHeadKelvin = 3;

    /// <summary>What is done where nothing can be foretold.</summary>
    public static Course Usual => new(true, true, UsualHeadKelvin);

    /// <summary>All that are weighed.</summary>
    public static ReadOnlySpan<Course> All => Table;

    private static readonly Course[] Table =
    [
        Usual,
        new(false, true, UsualHeadKelvin),
        new(true, false, UsualHeadKelvin),
        new(false, true, ThriftyHeadKelvin),
        new(false, false, ThriftyHeadKelvin),
        new(false, true, BankedHeadKelvin),
    ];
}
