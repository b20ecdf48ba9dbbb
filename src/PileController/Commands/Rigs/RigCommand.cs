using System.CommandLine;
using PileController.Commands.Shell;

namespace PileController.Commands.Rigs;

/// <summary>rig: what is done to the rig itself.</summary>
internal static class RigCommand
{
    public static Command Create() => new PileCommand("rig", "What is done to the rig itself.", "PileController rig safe --settings pile.json")
    {
        RigSafeCommand.Create(),
    };
}
