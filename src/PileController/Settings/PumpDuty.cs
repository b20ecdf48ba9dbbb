using PileController.Control;
using PileController.Physics.Hydraulics;
using PileController.Physics.Plants;

namespace PileController.Settings;

/// <summary>Tells the controller how hard the pump must turn before water moves, from pump and loop as built.</summary>
internal static class PumpDuty
{
    // Cold water is the thickest; it is what a frost guard has to move.
    private const double ColdC = 5;
    private const int Halvings = 30;

    /// <summary>
    /// The duty from which more water moves than the interlock takes for none; 0 where the pump's usual least duty does
    /// that, 1 where not even full duty does. A meter may read a little low and a pump wear, so half as much again is
    /// asked for; from there the regulator finds its way to the least flow.
    /// </summary>
    public static double Moving(PileSettings settings)
    {
        LoopHydraulics loop = new(LoopCircuit.Pump(settings.Loop), LoopCircuit.Runs(settings.Loop, settings.Heap.Coil));
        double wanted = 1.5 * settings.Control.Limits.NoFlowLitresPerMinute;
        bool Moves(double duty) => loop.FlowLitresPerMinute(duty, ColdC) >= wanted;
        if (Moves(ControlSettings.UsualLeastDuty))
        {
            return 0;
        }

        double still = ControlSettings.UsualLeastDuty;
        double moves = 1;
        for (int i = 0; i < Halvings; i++)
        {
            double middle = 0.5 * (still + moves);
            (still, moves) = Moves(middle) ? (still, middle) : (middle, moves);
        }

        return moves;
    }
}
