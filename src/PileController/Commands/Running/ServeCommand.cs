using System.CommandLine;
using PileController.Commands.Shell;

namespace PileController.Commands.Running;

/// <summary>serve: runs the controller and its page.</summary>
internal static class ServeCommand
{
    public static Command Create() =>
        new PileCommand("serve", "Runs the controller and its page; the simulated demo when no settings are given.", "PileController serve");
}
