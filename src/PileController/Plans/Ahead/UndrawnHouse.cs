using PileController.Control;
using PileController.Control.Means;
using PileController.Physics.Plants;
using PileController.Seasons;

namespace PileController.Plans.Ahead;

/// <summary>
/// The house with no heap at all: weather, house, standing water and backup heat. The undrawn twin that a single season
/// is run beside has a heap whose frost guard warms its lines and, by the way, the house; here that heat counts as useful,
/// since without a heap there is none of it.
/// </summary>
internal static class UndrawnHouse
{
    // As long as a tick of the seasons it stands beside, so that both err alike; it costs next to nothing.
    private const double StepSeconds = 60;

    // As the controller has it: backup heat goes off this far above the house's minimum, K.
    private const double BackupReleaseKelvin = 0.5;

    /// <summary>Degree-hours below the set point, K·h.</summary>
    public static double SetPointDegreeHours(SeasonPlan plan)
    {
        ControlSettings control = plan.Control;
        LoneHouse house = new(plan.Build, plan.Weather, plan.StartUtcMilliseconds);
        double sum = 0;
        bool backup = false;
        int steps = (int)(plan.Days * 86_400 / StepSeconds);
        for (int i = 0; i < steps; i++)
        {
            double wish = WantRule.SetPointC(control, LocalHour(house.UtcMilliseconds, plan.OffsetMinutes));
            backup = control.BackupFitted
                && house.HouseC < control.HouseMinimumC + (backup ? BackupReleaseKelvin : 0);
            house.Step(StepSeconds, backup ? plan.Build.House.BackupWatts : 0);
            sum += Math.Max(0, wish - house.HouseC) * StepSeconds / 3600;
        }

        return sum;
    }

    private static double LocalHour(long utcMilliseconds, int offsetMinutes) =>
        new Instant(utcMilliseconds, 0, offsetMinutes).LocalHour;
}
