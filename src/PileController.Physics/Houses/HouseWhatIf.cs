namespace PileController.Physics.Houses;

/// <summary>One thing that could be changed at a house, and what it does on a night.</summary>
/// <param name="Kind">Which: "curtain", "secondSkin", "thermalMass" or "lowerSetPoint".</param>
/// <param name="LossWatts">Heat the house then asks of its heating, W.</param>
/// <param name="SavedWatts">By how much that is less, W.</param>
public sealed record HouseWhatIf(string Kind, double LossWatts, double SavedWatts)
{
    /// <summary>Saving of a night curtain where the house has none, share of the glazing's loss: 25 to 35 % (Greenhouse Canada, February 2020).</summary>
    public const double CurtainSaving = 0.30;

    /// <summary>
    /// Resistance a second skin adds, m²·K/W: what makes double film lose 34 % less than single (Rasheed, Lee, Lee, on
    /// greenhouse covers), the single film at 6.8 W/(m²·K) (from memory).
    /// </summary>
    public const double SkinM2KPerW = ((1 / (1 - 0.34)) - 1) / 6.8;

    /// <summary>Water in the barrels of the thermal mass, kg: five drums of 200 L (common practice, no source).</summary>
    public const double BarrelsKg = 1000;

    /// <summary>How far that water warms by day and cools by night, K (common practice, no source).</summary>
    public const double BarrelSwingK = 8;

    /// <summary>Length of a winter night, h.</summary>
    public const double NightHours = 14;

    /// <summary>By how much the set point is lowered, K.</summary>
    public const double LoweredK = 3;

    private const double WaterJPerKgK = 4186;

    /// <summary>Each change by itself, on a night of given temperatures.</summary>
    /// <param name="house">The house as it is.</param>
    /// <param name="insideC">Air inside, °C.</param>
    /// <param name="outsideC">Air outside, °C, at most the inside's.</param>
    /// <param name="windMPerS">Wind, m/s.</param>
    public static IReadOnlyList<HouseWhatIf> All(HouseBuild house, double insideC, double outsideC, double windMPerS = HouseLoss.DesignWindMPerS)
    {
        Require.Within(outsideC, double.MinValue, insideC, "°C");
        double now = Watts(house, false, insideC);
        HouseBuild curtained = house with { CurtainSaving = house.CurtainSaving > 0 ? house.CurtainSaving : CurtainSaving };
        HouseBuild doubled = house with { GlazingUWPerM2K = 1 / ((1 / house.GlazingUWPerM2K) + SkinM2KPerW) };
        double barrels = Math.Min(now, BarrelsKg * WaterJPerKgK * BarrelSwingK / (NightHours * 3600));
        return
        [
            To("curtain", Watts(curtained, true, insideC)),
            To("secondSkin", Watts(doubled, false, insideC)),
            To("thermalMass", now - barrels),
            To("lowerSetPoint", Watts(house, false, Math.Max(outsideC, insideC - LoweredK))),
        ];

        HouseWhatIf To(string kind, double watts) => new(kind, watts, now - watts);

        double Watts(HouseBuild changed, bool curtainDrawn, double inside) =>
            HouseLoss.Of(changed, curtainDrawn).InWind(windMPerS, inside - outsideC).Watts(inside, outsideC);
    }
}
