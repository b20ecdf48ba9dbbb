using PileController.Control;
using PileController.Physics.Sky.Weather;
using PileController.Settings;
using PileController.Simulation;

namespace PileController.Seasons;

/// <summary>Makes a season plan from settings.</summary>
internal static class SeasonPlanning
{
    public static SeasonPlan Of(PileSettings settings, ControlSettings control, WeatherSeries weather, DateOnly start, int days)
    {
        int offset = HoldingBuild.StandardOffsetMinutes(settings);
        long startUtc = new DateTimeOffset(start.ToDateTime(TimeOnly.MinValue), TimeSpan.FromMinutes(offset)).ToUnixTimeMilliseconds();
        return new SeasonPlan(HoldingBuild.Plant(settings), control, settings.Rig, weather, offset, startUtc, days);
    }

    /// <summary>Null, or why the weather does not cover the season.</summary>
    public static string? Uncovered(SeasonPlan plan)
    {
        long end = plan.StartUtcMilliseconds + (plan.Days * 86_400_000L);
        return plan.StartUtcMilliseconds >= plan.Weather.CoversFrom && end <= plan.Weather.CoversTo
            ? null
            : $"the weather runs from {Day(plan.Weather.CoversFrom, plan)} to {Day(plan.Weather.CoversTo, plan)}";
    }

    private static string Day(long utcMilliseconds, SeasonPlan plan) =>
        DateTimeOffset.FromUnixTimeMilliseconds(utcMilliseconds).ToOffset(TimeSpan.FromMinutes(plan.OffsetMinutes)).ToString("yyyy-MM-dd HH:mm");
}
