using PileController.Physics.Hydraulics;

namespace PileController.Physics.Tests.Hydraulics;

/// <summary>
/// Crane TP-410 problem 7.15 as the fluids library's examples state it: 100 US gal/min at 70 °F through 500 ft of 3 in schedule 40
/// with 400 ft of lift; a gate valve, four elbows, a lift check valve of 2½ in bore and an exit; roughness 0.0022 in.
/// </summary>
internal static class UphillProblem
{
    private const double Inch = 0.0254;
    private const double Bore = 3.068 * Inch;

    private static readonly PipeRun Run = new(500 * 12 * Inch, Bore, FittingK, 400 * 12 * Inch, 0.0022 * Inch);

    public const double WaterC = (70 - 32) / 1.8;

    public const double FlowLitresPerMinute = 100 * 3.785411784;

    public static OperatingPoint Point => new(FlowLitresPerMinute, HeadM(FlowLitresPerMinute), double.NaN);

    private static double FittingK =>
        Named("gate-valve") + (4 * Named("elbow")) + Named("exit") + LiftCheckK;

    // Crane's lift check valve of smaller bore (from memory): (600 f + β (½ (1 − β²) + (1 − β²)²)) / β⁴, 2.469 in in 3.068 in.
    private static double LiftCheckK
    {
        get
        {
            double ratio = 2.469 / 3.068;
            double gap = 1 - (ratio * ratio);
            return ((600 * Fitting.RoughTurbulentFriction(Bore)) + (ratio * ((gap / 2) + (gap * gap)))) / Math.Pow(ratio, 4);
        }
    }

    public static double HeadM(double flowLitresPerMinute) => Run.HeadM(flowLitresPerMinute, WaterC);

    private static double Named(string name) => Fitting.Find(name)!.LossK(Bore);
}
