using System.CommandLine;
using PileController.Commands.Shell;

namespace PileController.Commands.Calc;

/// <summary>calc: the sums behind the control, by themselves.</summary>
internal static class CalcCommand
{
    public static Command Create() =>
        new PileCommand(
            "calc", "Works out one thing by itself: water, air, draw, sun, pipe, pump, coil, line, duct, air through the heap, a recipe, the house.",
            "PileController calc water --temp \"40 °C\"")
        {
            CalcWater.Create(), CalcAir.Create(), CalcDraw.Create(), CalcSun.Create(),
            CalcPipe.Create(), CalcPump.Create(), CalcCoil.Create(), CalcLine.Create(),
            CalcDuct.Create(), CalcThroughHeap.Create(), CalcBlend.Create(), CalcHouse.Create(),
        };
}
