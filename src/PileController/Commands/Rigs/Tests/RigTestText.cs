using System.CommandLine;
using PileController.Commands.Ledgers;
using PileController.Commissioning;
using PileController.Commissioning.Sheets;

namespace PileController.Commands.Rigs.Tests;

/// <summary>Tells what a test found.</summary>
internal static class RigTestText
{
    /// <summary>To a person or to a machine.</summary>
    public static void Tell(ParseResult parse, bool json, SheetEntry entry, string? keptIn)
    {
        if (json)
        {
            LedgerAsk.WriteJson(parse, new { entry.Test, entry.Title, entry.Simulated, entry.By, entry.Outcomes, Kept = keptIn is not null });
            return;
        }

        TextWriter output = parse.InvocationConfiguration.Output;
        foreach (Outcome outcome in entry.Outcomes)
        {
            Tell(output, outcome);
        }

        output.WriteLine(keptIn is null ? "Not kept: --data DIR --who NAME keeps it on the sheet." : $"Kept on the sheet in {keptIn}; rig sheet --data {keptIn} shows it.");
    }

    private static void Tell(TextWriter output, Outcome outcome)
    {
        output.WriteLine($"{Mark(outcome.Verdict)} {outcome.Subject}: {outcome.Sentence}");
        foreach (SettingsLine line in outcome.Adopt)
        {
            output.WriteLine($"  settings: {line.Path}: {line.Json}{(line.FromPage ? "" : "   (write it into the settings file, then check it)")}");
        }
    }

    /// <summary>A verdict in a word of even width.</summary>
    public static string Mark(Soundness verdict) => verdict switch
    {
        Soundness.Sound => "[sound]   ",
        Soundness.Doubtful => "[doubtful]",
        _ => "[failed]  ",
    };
}
