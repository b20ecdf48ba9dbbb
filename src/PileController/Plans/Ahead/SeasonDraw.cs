using PileController.Physics;
using PileController.Physics.Heaps;
using PileController.Physics.Houses;

namespace PileController.Plans.Ahead;

/// <summary>What is drawn for one season: how far it lies from what the settings say.</summary>
/// <param name="FastFactor">Times the share that burns fast.</param>
/// <param name="SlowFactor">Times the share that burns slowly.</param>
/// <param name="MoistureShift">Added to the moisture, share of the wet mass.</param>
/// <param name="MassFactor">Times the mass.</param>
/// <param name="PermeabilityFactor">Times the permeability.</param>
/// <param name="CoverFactor">Times the resistance of the blanket.</param>
/// <param name="GroundKelvin">Added to the deep ground, K.</param>
/// <param name="AirChangesFactor">Times the air changes of the house.</param>
/// <param name="WinterKelvin">Added to every hour's air outside, K.</param>
/// <param name="ProbeSeed">Seed of the probes' errors and noise.</param>
internal readonly record struct SeasonDraw(
    double FastFactor, double SlowFactor, double MoistureShift, double MassFactor, double PermeabilityFactor, double CoverFactor,
    double GroundKelvin, double AirChangesFactor, double WinterKelvin, int ProbeSeed)
{
    private const int ProbePlace = 1000;

    // More than this of the dry mass never burns within a season.
    private const double MostDegradable = 0.95;

    /// <summary>What a season of a seed draws. Factors are log-normal about 1, the rest normal about 0.</summary>
    public static SeasonDraw Of(Spreads spreads, long seed, int season)
    {
        DrawStream stream = new(seed, season);
        double Factor(int quantity, double spread) => Portable.Exp(spread * stream.Normal(quantity));
        return new SeasonDraw(
            Factor(0, spreads.Fast), Factor(1, spreads.Slow), spreads.Moisture * stream.Normal(2), Factor(3, spreads.Mass),
            Factor(4, spreads.Permeability), Factor(5, spreads.Cover), spreads.GroundKelvin * stream.Normal(6),
            Factor(7, spreads.AirChanges), spreads.WinterKelvin * stream.Normal(8), stream.Whole(ProbePlace));
    }

    /// <summary>The heap as drawn, kept within what the settings would allow.</summary>
    public HeapBuild Heap(HeapBuild build)
    {
        double fast = Math.Min(0.5, build.FastFraction * FastFactor);
        double slow = Math.Min(0.8, build.SlowFraction * SlowFactor);
        double shrink = Math.Min(1, MostDegradable / Math.Max(MostDegradable, fast + slow));
        return build with
        {
            FastFraction = fast * shrink,
            SlowFraction = slow * shrink,
            MoistureFraction = Math.Clamp(build.MoistureFraction + MoistureShift, 0.2, 0.8),
            WetMassKg = build.WetMassKg * MassFactor,
            PermeabilityM2 = Math.Clamp(build.PermeabilityM2 * PermeabilityFactor, 1e-11, 1e-6),
            CoverThicknessM = Math.Min(1, build.CoverThicknessM * CoverFactor),
        };
    }

    /// <summary>The house as drawn.</summary>
    public HouseBuild House(HouseBuild build) => build with
    {
        AirChangesPerHour = Math.Min(10, build.AirChangesPerHour * AirChangesFactor),
        GroundC = Math.Clamp(build.GroundC + GroundKelvin, -5, 30),
    };
}
