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
    private const double RecoveredKelvin = 3.5;

    // A heap that cools by itself can stand well above its floor and still bear no draw: it has not recovered, and it
    // must bear a little before it has, or the mode would swing from tick to tick.
    private const double RecoveredWatts = 50;

    // Above this the microbes work less well the hotter it gets: heat is banked in the house rather than lost.
    private const double BankFromC = 57;
    private const double BankMostKelvin = 6;

    public static Grant Decide(
        ControlSettings settings, in HeapEstimate estimate, double bodyC, in Reach reach, double houseC, double outsideC,
        double localHour)
    {
        double banked = Math.Clamp(estimate.ActiveZoneCelsius - BankFromC, 0, BankMostKelvin);
        HouseWant want = WantRule.Of(settings, houseC, outsideC, localHour, banked);
        HeapMeans means = MeansRule.Of(settings, estimate, bodyC);
        double frost = Math.Min(want.FrostW, means.FrostW);
        // With too few probes to trust the estimate, frost is kept out and no more is risked.
        double comfort = estimate.Trusted ? Math.Min(want.ComfortW, means.ComfortW) : 0;
        double granted = Math.Max(frost, comfort);
        bool floorNear = means.FrostW <= 0;
        bool recovered = means.FrostW >= RecoveredWatts && Math.Min(estimate.ActiveZoneCelsius, bodyC) > settings.HeapFloorC + RecoveredKelvin
            + (MeansRule.Quantile(settings.Confidence) * estimate.UncertaintyKelvin);
        if (!estimate.Lit)
        {
            granted = 0;
        }

        double water = Math.Min(granted, reach.WaterW);
        double left = granted - water;
        double air = left >= LeastAirWatts && want.FrostW > 0 ? Math.Min(left, reach.AirW) : 0;
        Curb curb = !estimate.Lit ? Curb.NotLit
            : want.ComfortW <= 0 ? Curb.NoWant
            : !estimate.Trusted ? Curb.Probes
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
