using PileController.Parts;
using PileController.Physics.Hydraulics;

namespace PileController.Commands.Calc;

/// <summary>What a pump does on a loop, for machines; no flow has no power per flow.</summary>
internal sealed record PumpAnswer(
    string Name, double FlowM3PerS, double HeadM, double PowerW, double? WattsPerLitrePerMinute, double WhPerDay,
    double FlowLitresPerMinute, double HydraulicW, double HoursPerDay, double HoursOnPanel, double HoursOnBattery,
    double VelocityMPerS, bool PurgesAir, double? TransitSeconds,
    double ShutoffHeadM, double FreeFlowLitresPerMinute, double LargestMissM, IReadOnlyList<ThrottleAnswer> Throttled)
{
    private static readonly double[] Openings = [1, 0.75, 0.5, 0.35, 0.25, 0.15, 0.1, 0.05];

    public static PumpAnswer Of(PumpPart pump, LoopPart loop)
    {
        PumpCurve curve = pump.Curve();
        PipeRun[] runs = loop.PipeRuns();
        OperatingPoint At(double open) => OperatingPoint.Throttled(curve, loop.Duty, runs, loop.WaterC, open);
        OperatingPoint point = At(loop.ValveOpen);

        // Air sticks where the water is slowest: the widest run decides.
        double slowest = Flow.VelocityMPerS(point.FlowLitresPerMinute, runs.Max(run => run.InnerDiameterM));
        bool runsAtAll = point.Watts > 0;
        return new PumpAnswer(
            pump.Name, point.FlowLitresPerMinute / 60_000, point.HeadM, point.Watts,
            point.FlowLitresPerMinute > 0 ? point.WattsPerLitrePerMinute : null, point.WattHours(loop.HoursPerDay),
            point.FlowLitresPerMinute, point.HydraulicWatts(loop.WaterC), loop.HoursPerDay,
            runsAtAll ? loop.Power.SunnyHours(point.Watts) : 0, runsAtAll ? loop.Power.DarkHours(point.Watts) : 0,
            slowest, AirPurge.Purges(slowest), point.FlowLitresPerMinute > 0 ? runs.Sum(run => run.TransitSeconds(point.FlowLitresPerMinute)) : null,
            curve.ShutoffHeadM, curve.FreeFlowLitresPerMinute, pump.LargestMissM(curve),
            [.. Openings.Select(open => ThrottleAnswer.Of(open, At(open)))]);
    }
}
