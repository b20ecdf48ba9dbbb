using System.CommandLine;
using PileController.Commands.Shell;

namespace PileController.Commands.Ledgers;

/// <summary>ledger: the grower's book of seasons.</summary>
internal static class LedgerCommand
{
    public static Command Create() =>
        new PileCommand("ledger", "Keeps the book of seasons: heat by day and month, mass, parts, notes, money, lessons.", "PileController ledger show --data DIR")
        {
            LedgerShow.Create(), LedgerSeason.Open(), LedgerSeason.Amend(), LedgerSeason.Close(), LedgerEntries.Note(), LedgerEntries.Mass(),
            LedgerEntries.Part(), LedgerReport.Create(), LedgerCompare.Create(),
        };
}
