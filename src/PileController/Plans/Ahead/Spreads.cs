namespace PileController.Plans.Ahead;

/// <summary>
/// How far a season may lie from what the settings say, as standard deviations. Heap and house are never known to the
/// last per cent; the season ahead draws each of these anew for every season.
/// </summary>
public sealed record Spreads
{
    /// <summary>Share of solids that burn fast, relative (common practice, no source: greens are judged by eye).</summary>
    public double Fast { get; init; } = 0.3;

    /// <summary>
    /// Share of solids that burn slowly within a season, relative (common practice, no source; a county note allows
    /// large chips at most a third of their mass in the first year, CMP-103).
    /// </summary>
    public double Slow { get; init; } = 0.2;

    /// <summary>
    /// Moisture of the heap, of its wet mass (from the preferred band 50 to 60 %, Manitoba Agriculture and Cornell Waste
    /// Management Institute: that band holds four builds of five).
    /// </summary>
    public double Moisture { get; init; } = 0.04;

    /// <summary>Mass of the heap, relative (from bulk densities of green hardwood chips, 250 to 350 kg/m³: loads are bought by volume).</summary>
    public double Mass { get; init; } = 0.1;

    /// <summary>Permeability to air, of its natural logarithm (common practice, no source: a factor of two).</summary>
    public double Permeability { get; init; } = 0.7;

    /// <summary>Resistance of the blanket, relative (wood shavings and straw conduct 0.03 to 0.30 W/(m·K): Ahn, Sauer, Richard, Glanville 2009).</summary>
    public double Cover { get; init; } = 0.3;

    /// <summary>Deep ground, K (common practice, no source).</summary>
    public double GroundKelvin { get; init; } = 1.5;

    /// <summary>Air changes of the house by leaks, relative (common practice, no source).</summary>
    public double AirChanges { get; init; } = 0.3;

    /// <summary>The whole winter warmer or colder than the one recorded, K (common practice, no source: few records stand for many winters).</summary>
    public double WinterKelvin { get; init; } = 1;
}
