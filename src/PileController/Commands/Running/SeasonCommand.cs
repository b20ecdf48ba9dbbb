using System.CommandLine;
using PileController.Commands.Shell;

namespace PileController.Commands.Running;

/// <summary>season: runs a whole winter on recorded weather.</summary>
internal static class SeasonCommand
{
    public static Command Create() =>
        new PileCommand("season", "Runs a whole winter on recorded weather under one draw rule.", "PileController season --settings pile.json --weather weather.csv --start 2012-11-01 --days 150 --policy means");
}
