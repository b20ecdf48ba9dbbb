using System.CommandLine;
using PileController.Commands.Rigs.Tests;
using PileController.Commands.Shell;

namespace PileController.Commands.Rigs;

/// <summary>rig: what the real rig is wired to, what is done to it, and what it proves.</summary>
internal static class RigCommand
{
    public static Command Create()
    {
        PileCommand command = new(
            "rig", "Tells what the real rig is wired to; makes it safe; commissions it test by test.", "PileController rig pins --settings hardware/examples/rig.json")
        {
            RigPins.Create(), RigSafeCommand.Create(),
        };
        foreach (Command test in RigTests.Create())
        {
            command.Subcommands.Add(test);
        }

        command.Subcommands.Add(RigSheet.Create());
        return command;
    }
}
