using System.CommandLine;
using PileController.Commands.Shell;

namespace PileController.Commands.Running;

/// <summary>season: runs a whole winter on recorded weather.</summary>
internal static class SeasonCommand
{
    public static Command Create() =>
        new PileCommand("season", "Runs a whole winter on recorded weather under one draw rule.", "PileController season");
}
