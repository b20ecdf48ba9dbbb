using PileController.Physics.Hydraulics;

namespace PileController.Physics.Plants;

/// <summary>The water that stands in the house's pipe and tank while nothing is drawn: it follows the house and evens it out.</summary>
internal sealed class StandingWater(LoopBuild build, double startC)
{
    private readonly double _pipeJPerK = Loop.HousePipeJPerK(build);
    private readonly double _tankJPerK = Loop.TankJPerK(build);
    private readonly double _pipeWPerK = build.HousePipeM * build.HousePipeWPerMK;
    private double _pipeC = startC;
    private double _tankC = startC;

    /// <summary>One backward step. Tells what the water gave to the house, J.</summary>
    public double Step(double seconds, double houseC) =>
        Step(seconds, houseC, _pipeWPerK, _pipeJPerK, ref _pipeC) + Step(seconds, houseC, build.TankLossWPerK, _tankJPerK, ref _tankC);

    private static double Step(double seconds, double houseC, double wattsPerK, double joulesPerK, ref double waterC)
    {
        double give = seconds * wattsPerK;
        waterC = ((joulesPerK * waterC) + (give * houseC)) / (joulesPerK + give);
        return give * (waterC - houseC);
    }
}
