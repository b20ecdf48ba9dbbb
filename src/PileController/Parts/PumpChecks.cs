using PileController.Physics.Fluids;
using PileController.Physics.Hydraulics;
using PileController.Settings;
using PileController.Units;

namespace PileController.Parts;

/// <summary>What cannot be a pump although each value by itself could.</summary>
internal static class PumpChecks
{
    // Figures of the same thing told twice may differ by this much: buckets and meters are rounded.
    private const double Slack = 0.05;

    public static IEnumerable<SettingsFault> Of(PumpPart pump)
    {
        if (pump.Points.Count < 2)
        {
            yield return new SettingsFault("points", $"a list of {pump.Points.Count}", "two measurements or more, at different flows");
        }

        SettingsFault[] gaps = [.. pump.Points.SelectMany((point, i) => Gaps(point, pump.RatedVolts, $"points[{i}]"))];
        foreach (SettingsFault fault in gaps.Length > 0 ? gaps : Rises(pump))
        {
            yield return fault;
        }
    }

    private static IEnumerable<SettingsFault> Gaps(PumpPointPart point, double? ratedVolts, string path)
    {
        if (point.Flow is null)
        {
            yield return new SettingsFault($"{path}.flow", "missing", "a flow, or bucket and time together");
        }

        if (point is { FlowLitresPerMinute: { } metered, BucketLitres: { } litres, Seconds: { } seconds }
            && Math.Abs(metered - (60 * litres / seconds)) > Slack * Math.Max(metered, 60 * litres / seconds))
        {
            yield return new SettingsFault($"{path}.flow", Flow(metered), $"about {Flow(60 * litres / seconds)}, as bucket and time say, or leave it out");
        }

        // Alternating current may take less power than volts times amperes, never more.
        if (point is { Watts: { } watts, Volts: { } volts, Amperes: { } amperes } && watts > (1 + Slack) * volts * amperes)
        {
            yield return new SettingsFault($"{path}.power", $"{watts:0.##} W", $"at most {volts * amperes:0.##} W, as voltage and current say, or leave it out");
        }

        if (point is { Flow: { } flow, Power: { } power } && new OperatingPoint(flow, point.HeadM, power).HydraulicWatts(Water.HighestC) is var moved && moved > power)
        {
            yield return new SettingsFault(
                $"{path}.power", $"{power:0.##} W", $"more than the {moved:0.##} W that lift {Flow(flow)} by {Head(point.HeadM)}: no pump gives more than it takes");
        }

        if (point.Power is null)
        {
            yield return new SettingsFault($"{path}.power", "missing", "a power, or voltage and current together");
        }

        if (point.DutyAt(ratedVolts) > 1)
        {
            yield return new SettingsFault($"{path}.voltage", $"\"{point.Volts} V\"", $"at most ratedVoltage, {ratedVolts} V");
        }
    }

    // Points at part duty are carried to full duty first (affinity laws): only there can they be compared.
    private static IEnumerable<SettingsFault> Rises(PumpPart pump)
    {
        var carried = pump.Points
            .Select((point, i) => (Point: point.Measured(pump.RatedVolts), Index: i))
            .Select(p => (p.Point, p.Index, Flow: p.Point.FlowLitresPerMinute / p.Point.Duty, Head: p.Point.HeadM / (p.Point.Duty * p.Point.Duty)))
            .OrderBy(p => p.Flow).ThenByDescending(p => p.Head).ToArray();
        for (int i = 1; i < carried.Length; i++)
        {
            (var low, var high) = (carried[i - 1], carried[i]);
            if (high.Flow > low.Flow && high.Head < low.Head)
            {
                continue;
            }

            yield return new SettingsFault(
                $"points[{high.Index}].head",
                $"{Head(high.Point.HeadM)} at {Flow(high.Point.FlowLitresPerMinute)}{AtFullDuty(high.Point.Duty, high.Head, high.Flow)}",
                $"less than the {Head(low.Head)} of points[{low.Index}] at {Flow(low.Flow)} and at a greater flow: a pump's head falls as its flow rises");
        }
    }

    private static string AtFullDuty(double duty, double headM, double flow) =>
        duty < 1 ? $" (at full duty {Head(headM)} at {Flow(flow)})" : "";

    private static string Head(double metres) => Show.Both(s => Show.Length(metres, s));

    private static string Flow(double litresPerMinute) => Show.Both(s => Show.WaterFlow(litresPerMinute, s));
}
