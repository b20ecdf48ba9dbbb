namespace PileController.Control.Foresight;

/// <summary>One way to draw in the hours ahead, of the few the horizon weighs.</summary>
/// <param name="Comfort">Whether heat is given for comfort.</param>
/// <param name="HeadKelvin">How far above its minimum the house is held against frost, K: more banks heat in floor and tank.</param>
public readonly record struct Course(bool Comfort, double HeadKelvin)
{
    /// <summary>The minimum is held from a little above it, K: the loop answers late.</summary>
    public const double UsualHeadKelvin = 1.0;

    // Where heat will be short every tenth of a degree counts: the house is held close above its minimum, and dips. Closer
    // still some K·h more would be saved, and in mild winters night after night would miss the minimum by a brush
    // (from seasons of the simulated holding).
    private const double ThriftyHeadKelvin = 0.4;

    // Heat banked ahead of a spell that coil and ducts cannot meet in time; more leaks away before it is of use
    // (from seasons of the simulated house).
    private const double BankedHeadKelvin = 3;

    /// <summary>What is done where nothing can be foretold.</summary>
    public static Course Usual => new(true, UsualHeadKelvin);

    /// <summary>All that are weighed.</summary>
    public static ReadOnlySpan<Course> All => Table;

    private static readonly Course[] Table =
    [
        Usual,
        new(false, UsualHeadKelvin),
        new(false, ThriftyHeadKelvin),
        new(false, BankedHeadKelvin),
    ];
}
