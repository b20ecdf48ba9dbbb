using System.CommandLine;
using PileController.Commands.Shell;

namespace PileController.Commands.Rigs;

/// <summary>rig: what concerns the real rig.</summary>
internal static class RigCommand
{
    public static Command Create() =>
        new PileCommand("rig", "Tells what the real rig is wired to.", "PileController rig pins --settings hardware/examples/rig.json")
        {
            RigPins.Create(),
        };
}
