using PileController.Control.Decisions;
using PileController.Control.Means;

namespace PileController.Control.Allocation;

/// <summary>
/// The controller's own rule: frost first, comfort second, both within the means. Water carries what it can; air takes
/// what is left over when the house stands near its minimum.
/// </summary>
internal static class MeansPolicy
{
    private const double LeastAirWatts = 150;
    private const double RecoveredKelvin = 2;

    // Above this the microbes work less well the hotter it gets: heat is banked in the house rather than lost.
    private const double BankFromC = 61;
    private const double BankMostKelvin = 4;

    public static Grant Decide(
        ControlSettings settings, in HeapEstimate estimate, double bodyC, in Reach reach, double houseC, double outsideC,
        double localHour)
    {
        HouseWant want = WantRule.Of(settings, houseC, outsideC, localHour);
        double banked = Math.Clamp(estimate.ActiveZoneCelsius - BankFromC, 0, BankMostKelvin);
        if (banked > 0)
        {
            HouseWant warmer = WantRule.Of(
                settings with { HouseDayC = settings.HouseDayC + banked, HouseNightC = settings.HouseNightC + banked },
                houseC, outsideC, localHour);
            want = want with { ComfortW = Math.Max(want.ComfortW, warmer.ComfortW) };
        }

        HeapMeans means = MeansRule.Of(settings, estimate, bodyC);
        double frost = Math.Min(want.FrostW, means.FrostW);
        double comfort = Math.Min(want.ComfortW, means.ComfortW);
        double granted = Math.Max(frost, comfort);
        bool floorNear = means.FrostW <= 0;
        bool recovered = Math.Min(estimate.ActiveZoneCelsius, bodyC) > settings.HeapFloorC + RecoveredKelvin
            + (MeansRule.Quantile(settings.Confidence) * estimate.UncertaintyKelvin);
        if (!estimate.Lit)
        {
            granted = 0;
        }

        double water = Math.Min(granted, reach.WaterW);
        double left = granted - water;
        double air = left >= LeastAirWatts && want.FrostW > 0 ? Math.Min(left, reach.AirW) : 0;
        Curb curb = !estimate.Lit ? Curb.NotLit
            : !estimate.Trusted ? Curb.Probes
            : want.ComfortW <= 0 ? Curb.NoWant
            : floorNear ? Curb.Floor
            : granted >= want.ComfortW - 1 ? (water + air < granted - 1 ? Curb.Reach : Curb.None)
            : want.FrostW > means.FrostW ? Curb.Means
            : water + air < granted - 1 ? Curb.Reach
            : Curb.Saving;
        return new Grant(
            want.ComfortW, means.FrostW, water, air, reach.AirW, curb, want.SetPointC, false, false, false, floorNear, recovered,
            want.FrostW > 0);
    }
}
