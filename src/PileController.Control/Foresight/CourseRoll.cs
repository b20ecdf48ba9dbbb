using PileController.Control.Estimation;
using PileController.Control.Means;
using PileController.Control.Metering;
using PileController.Control.Regulation;
using PileController.Physics;
using PileController.Physics.Plants;

namespace PileController.Control.Foresight;

/// <summary>What a course comes to in the hours ahead.</summary>
/// <param name="Cost">The smaller, the better, K·h: cold, comfort missed, and what lacks in the heap at the end.</param>
/// <param name="ColdDegreeHours">Of these, the house below its minimum, K·h.</param>
internal readonly record struct Foretold(double Cost, double ColdDegreeHours);

/// <summary>
/// One course lived through the hours ahead on the controller's own models of heap and house. An hour a step; what is
/// drawn in it follows the tick's own rules, a little simplified: frost first, comfort above the season's reserve, nothing that
/// would take the active zone below its margin.
/// </summary>
internal static class CourseRoll
{
    private const double HourSeconds = 3600;
    private const double WaterWPerKPerLitreMinute = Carriers.WaterJPerLK / 60;

    // A kelvin of comfort missed for an hour against a kelvin below the minimum (the grower's priorities: plants first).
    private const double ComfortWorth = 0.02;

    // An hour's kelvin below the floor is never worth what it gives to the house.
    private const double FloorWorth = 50;

    // The hottest half falls on at rest by so much of what it stands above the inner body's mean (from seasons of the
    // simulated heap; the tick itself asks its model, see RestRoll).
    internal const double SettlingShare = 0.7;

    // A pump that runs and rests leaves the house to swing: so far above the minimum it is not quite safe, and a kelvin
    // of that for an hour is worth so much of one below.
    private const double SafeHeadKelvin = 1;
    private const double SafeWorth = 0.1;

    // Share of the heat that lacks to the season's reserve which the weeks beyond the horizon will have use for: all of it,
    // since in a spell longer than the horizon a joule is worth the same whichever night it goes to (held against lesser
    // shares on seasons of the simulated holding).
    private const double LaterShare = 1;

    // How far the battery will be charged in the hours ahead is not foretold: comfort goes as it mostly does.
    private const double UsualBriskness = 1.0 / 3;

    /// <summary>What a course comes to.</summary>
    /// <param name="task">Where it begins.</param>
    /// <param name="course">The course.</param>
    /// <param name="seen">Shown each hour's end: which, the house air, °C, and what water and air drew, W; or null.</param>
    public static Foretold Live(in HorizonTask task, in Course course, Action<int, double, double, double>? seen = null)
    {
        ControlSettings settings = task.Settings;
        HeapFigures heap = task.Heap;
        HeapShape shape = heap.Shape;
        Span<double> t = stackalloc double[HeapShape.Nodes];
        task.HeapC.CopyTo(t);
        HouseState house = task.HouseNow;
        double fullWPerK = settings.MostFlowLitresPerMinute * WaterWPerKPerLitreMinute;
        double ductWPerK = DuctWPerK(settings);
        double gentle = settings.DuctWPerK > 0 ? BlowerRegulator.GentleDuty(UsualBriskness) : 0;
        double capacity = Estimator.BodyCapacityShare * settings.HeapHeatCapacityJPerK;
        double minimum = settings.HouseMinimumC;
        double zone = HeapRings.ActiveZone(t, shape);
        double cost = 0;
        double cold = 0;
        for (int h = 0; h < task.OutsideC.Length; h++)
        {
            double outside = task.OutsideC[h];
            double gain = task.GainW[h];
            double above = zone - (SettlingShare * Math.Max(0, zone - HeapRings.Body(t, shape))) - task.LeastZoneC;
            double hour = (task.At.LocalHour + h) % 24;
            double bank = Math.Clamp(zone - settings.HeapFloorC - task.ReserveKelvin, 0, WantRule.BankMostKelvin);
            double set = WantRule.SetPointC(settings, hour);
            double frostWish = minimum + course.HeadKelvin;

            // What the house would want in this hour is what its own model says, the sun of the hour taken off.
            HouseState idle = task.House.Step(house, HourSeconds, outside, gain, 0, 0);
            double frost = task.House.Wanted(frostWish, idle.AirC, HourSeconds);
            double comfort = course.Comfort && bank > 0 ? task.House.Wanted(set + bank, idle.AirC, HourSeconds) : 0;
            double borne = above > 0 ? MeansRule.FrostWatts(capacity, above) : 0;
            double granted = Math.Min(Math.Max(frost, Math.Min(comfort, capacity * bank / (MeansRule.ComfortHours * HourSeconds))), borne);

            (double coil, double drum) = HeapRings.Reach(t, heap, new HeapFlow(fullWPerK, house.TankC));
            double reach = Math.Max(0, coil + drum);
            double share = reach > 0 ? Math.Min(1, granted / reach) : 0;
            double left = granted - (share * reach);
            double duct = Math.Max(0, ductWPerK * (t[shape.DuctRing] - house.AirC));
            double mostAir = frost > share * reach ? duct : gentle * duct;
            double air = left > 0 ? Math.Min(left, mostAir) : 0;
            HeapStep step = HeapRings.Step(
                t, heap, HourSeconds, new HeapLoad(0, 0, air, outside, settings.House.GroundC),
                new HeapFlow(share * fullWPerK, house.TankC));
            double water = share > 0 ? Math.Max(0, step.WaterWatts) : 0;
            house = task.House.Step(house, HourSeconds, outside, gain, water, air);
            zone = HeapRings.ActiveZone(t, shape);
            double below = Math.Max(0, minimum - house.AirC);
            cold += below;
            cost += below
                + (SafeWorth * Math.Clamp(minimum + SafeHeadKelvin - house.AirC, 0, SafeHeadKelvin)) + (ComfortWorth * Math.Max(0, set - house.AirC))
                + (FloorWorth * Math.Max(0, settings.HeapFloorC - zone));
            seen?.Invoke(h, house.AirC, water, air);
        }

        double lacking = Math.Max(0, settings.HeapFloorC + task.ReserveKelvin - zone);
        return new Foretold(cost + (LaterShare * lacking * capacity / (task.House.LossWPerK * HourSeconds)), cold);
    }

    private static double DuctWPerK(ControlSettings settings)
    {
        double carried = settings.BlowerFitted ? settings.BlowerFullFlowM3PerS * DuctBed.AirJPerM3K : 0;
        return carried > 0 ? carried * -Portable.ExpMinusOne(-settings.DuctWPerK / carried) : 0;
    }
}
