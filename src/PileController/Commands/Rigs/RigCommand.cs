using System.CommandLine;
using PileController.Commands.Shell;

namespace PileController.Commands.Rigs;

/// <summary>rig: what the real rig is wired to, and what is done to it.</summary>
internal static class RigCommand
{
    public static Command Create() =>
        new PileCommand("rig", "Tells what the real rig is wired to; makes it safe.", "PileController rig pins --settings hardware/examples/rig.json")
        {
            RigPins.Create(), RigSafeCommand.Create(),
        };
}
