namespace PileController.Physics.Houses;

/// <summary>
/// What a house loses a kelvin, by the formulae of greenhouse bulletins: U·A for the glazing, volume times air changes for
/// the leaks. The floor's exchange with the ground is left out, as it is there.
/// </summary>
/// <param name="GlazingWPerK">Through the glazing, W/K.</param>
/// <param name="LeakWPerK">With the air that leaks, W/K.</param>
public readonly record struct HouseLoss(double GlazingWPerK, double LeakWPerK)
{
    /// <summary>Wind for which U values and air changes are usually told: 15 mph, in m/s (common practice, no source).</summary>
    public const double DesignWindMPerS = 6.7056;

    // 0.075 lb/ft³ × 0.24 BTU/(lb·°F), the 0.018 BTU/(ft³·°F) of the bulletins.
    private const double AirJPerM3K = 0.075 * 16.018463374 * 0.24 * 4186.8;

    // Stack and wind terms of a low building with some shelter, (L/s)²/cm⁴ per K and per (m/s)² (ASHRAE Fundamentals, the
    // Lawrence Berkeley model; from memory). Only their ratio matters here.
    private const double Stack = 0.000145;
    private const double Wind = 0.000174;

    /// <summary>Both, W/K.</summary>
    public double TotalWPerK => GlazingWPerK + LeakWPerK;

    /// <summary>The loss with the air changes the house is said to have.</summary>
    /// <param name="house">The house.</param>
    /// <param name="curtainDrawn">Whether the night curtain is drawn.</param>
    public static HouseLoss Of(HouseBuild house, bool curtainDrawn) => new(
        house.GlazingAreaM2 * house.GlazingUWPerM2K * (1 - (curtainDrawn ? house.CurtainSaving : 0)),
        AirJPerM3K * house.VolumeM3 * house.AirChangesPerHour / 3600);

    /// <summary>The same house in a wind: leaks as <see cref="LeakRatio"/> says, glazing unchanged.</summary>
    /// <param name="windMPerS">Wind, m/s, 0 or more.</param>
    /// <param name="differenceK">Inside less outside, K.</param>
    public HouseLoss InWind(double windMPerS, double differenceK) =>
        this with { LeakWPerK = LeakWPerK * LeakRatio(windMPerS, differenceK) };

    /// <summary>Heat lost, W; negative where it is warmer outside.</summary>
    /// <param name="insideC">Air inside, °C.</param>
    /// <param name="outsideC">Air outside, °C.</param>
    public double Watts(double insideC, double outsideC) => TotalWPerK * (insideC - outsideC);

    /// <summary>
    /// How leaks grow with wind, as a ratio to those at <see cref="DesignWindMPerS"/>: the draught of the warm air and that
    /// of the wind add as squares, √(stack·ΔT + wind·v²), so that a still night has leaks too.
    /// </summary>
    /// <param name="windMPerS">Wind, m/s, 0 or more.</param>
    /// <param name="differenceK">Inside less outside, K.</param>
    public static double LeakRatio(double windMPerS, double differenceK)
    {
        Require.NotNegative(windMPerS, "m/s");
        double stack = Stack * Math.Abs(differenceK);
        return Math.Sqrt((stack + (Wind * windMPerS * windMPerS)) / (stack + (Wind * DesignWindMPerS * DesignWindMPerS)));
    }
}
