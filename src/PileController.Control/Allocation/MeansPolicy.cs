using PileController.Control.Decisions;
using PileController.Control.Foresight;
using PileController.Control.Means;

namespace PileController.Control.Allocation;

/// <summary>
/// The controller's own rule: frost first, comfort second, both within the means. Water carries what it can; air takes
/// what is left over. Against frost both go as hard as they can, for comfort gently. With an estimate that is not to be trusted
/// comfort leaves a good deal more in the heap.
/// </summary>
internal static class MeansPolicy
{
    private const double LeastAirWatts = 150;

    // The heap has recovered when it bears this little again, or the mode would swing from tick to tick. To wait for more
    // would leave heat in the heap between two cold nights of one spell (from seasons of the simulated holding).
    private const double RecoveredWatts = 50;

    public static Grant Decide(
        ControlSettings settings, in HeapEstimate estimate, double leastZoneC, in Reach reach, double houseC, double outsideC, in Instant at,
        in Course course, in BatteryLeave battery, double reserveKelvin, double guardJ)
    {
        double banked = Math.Clamp(MeansRule.SpareKelvin(settings, estimate, reserveKelvin), 0, WantRule.BankMostKelvin);
        HouseWant want = WantRule.Of(settings, houseC, outsideC, at.LocalHour, banked, course.HeadKelvin);
        HeapMeans means = MeansRule.Of(settings, estimate, leastZoneC, reserveKelvin, guardJ);
        double frost = Math.Min(want.FrostW, means.FrostW);
        double borne = course.Comfort ? Math.Min(want.ComfortW, means.ComfortW) : 0;
        double comfort = battery.ComfortShare * borne;
        double granted = Math.Max(frost, comfort);
        bool floorNear = means.FrostW <= 0;
        bool recovered = means.FrostW >= RecoveredWatts;
        if (!estimate.Lit)
        {
            granted = 0;
        }

        double water = Math.Min(granted, Math.Max(Math.Min(frost, reach.WaterW), reach.GentleWaterW));
        double left = Math.Max(granted, estimate.Lit ? BatteryRule.AirShare(settings, reach, battery) * borne : 0) - water;
        double mostAir = frost - water >= LeastAirWatts ? battery.FrostAirShare * reach.AirW : reach.GentleAirW;
        double air = left >= LeastAirWatts ? Math.Min(left, mostAir) : 0;
        Curb curb = !estimate.Lit ? Curb.NotLit
            : want.ComfortW <= 0 ? Curb.NoWant
            : !estimate.Trusted && borne <= 0 ? Curb.Probes
            : floorNear ? Curb.Floor
            : granted >= want.ComfortW - 1 ? (water + air < granted - 1 ? Curb.Reach : Curb.None)
            : want.FrostW > means.FrostW ? Curb.Means
            : water + air < granted - 1 ? Curb.Reach
            : course.Comfort && battery.ComfortShare < 1 && means.ComfortW > 0 ? Curb.Power
            : Curb.Saving;
        return new Grant(
            want.ComfortW, means.FrostW, water, air, reach.AirW, curb, want.SetPointC, false, false, false, floorNear, recovered,
            want.FrostW > 0 && houseC < settings.HouseMinimumC + course.UrgentKelvin);
    }
}
