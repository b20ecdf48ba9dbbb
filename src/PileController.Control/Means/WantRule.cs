namespace PileController.Control.Means;

/// <summary>What the house would like.</summary>
/// <param name="FrostW">To hold the minimum, W.</param>
/// <param name="ComfortW">To hold the set point, W; never less than <paramref name="FrostW"/>.</param>
/// <param name="SetPointC">The set point now, °C.</param>
public readonly record struct HouseWant(double FrostW, double ComfortW, double SetPointC);

/// <summary>
/// Heat the house would like: the loss at the wished temperature against the air outside, trimmed by how far the house
/// is from it. Frost first, comfort second.
/// </summary>
public static class WantRule
{
    /// <summary>
    /// What the heap holds above the season's reserve is banked in the house, up to so far above its set point, K: there it
    /// is of use, in the heap it only burns fuel.
    /// </summary>
    internal const double BankMostKelvin = 8;

    // Beyond its share of the loss the house is pulled to its wish by so much more, of its loss coefficient; never by
    // more than the loss again, since a cold house cannot be warmed at once. Against frost it is pulled harder: a degree
    // more than the minimum asks for is given away night after night, and lacks in the coldest week.
    private const double ComfortPullShare = 4;
    private const double FrostPullShare = 8;

    // Above its wish nothing is given beyond some tenths of a kelvin: what a bright morning has too much lacks the next night.
    private const double FrostHoldShare = 30;

    // Share of the loss that has to be met: walls and floor carry the rest over from warmer hours (from seasons of the
    // simulated house).
    private const double LossShare = 0.8;

    /// <summary>Finds the want.</summary>
    /// <param name="settings">What is known of the house.</param>
    /// <param name="houseC">House air, °C.</param>
    /// <param name="outsideC">Air outside, °C.</param>
    /// <param name="localHour">Local time of day, h.</param>
    /// <param name="bankedKelvin">How far above the set point comfort may go to bank heat in the house, K, 0 or more.</param>
    /// <param name="headKelvin">How far above its minimum the house is held against frost, K, 0 or more.</param>
    public static HouseWant Of(
        ControlSettings settings, double houseC, double outsideC, double localHour, double bankedKelvin = 0,
        double headKelvin = Foresight.Course.UsualHeadKelvin)
    {
        double set = SetPointC(settings, localHour);
        double frost = FrostWatts(settings, houseC, outsideC, headKelvin);
        double comfort = Watts(settings, set + bankedKelvin, houseC, outsideC, ComfortPullShare, ComfortPullShare);
        return new HouseWant(frost, Math.Max(frost, comfort), set);
    }

    /// <summary>Heat the house needs to hold its minimum, W.</summary>
    /// <param name="settings">What is known of the house.</param>
    /// <param name="houseC">House air, °C.</param>
    /// <param name="outsideC">Air outside, °C.</param>
    /// <param name="headKelvin">How far above the minimum it is held, K, 0 or more.</param>
    public static double FrostWatts(
        ControlSettings settings, double houseC, double outsideC, double headKelvin = Foresight.Course.UsualHeadKelvin) =>
        Watts(settings, settings.HouseMinimumC + headKelvin, houseC, outsideC, FrostPullShare, FrostHoldShare);

    /// <summary>The house set point at a time of day, °C: day, night, and a pre-warm before dawn.</summary>
    public static double SetPointC(ControlSettings settings, double localHour)
    {
        double begins = settings.DayBeginsHour - settings.PreWarmHours;
        return localHour >= begins && localHour < settings.NightBeginsHour ? settings.HouseDayC : settings.HouseNightC;
    }

    private static double Watts(
        ControlSettings settings, double wishC, double houseC, double outsideC, double pullShare, double holdShare)
    {
        double loss = Math.Max(0, LossShare * settings.HouseLossWPerK * (wishC - outsideC));
        double pull = (houseC > wishC ? holdShare : pullShare) * settings.HouseLossWPerK * (wishC - houseC);
        return Math.Max(0, loss + Math.Min(pull, loss));
    }
}
