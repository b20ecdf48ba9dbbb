using System.Text;
using PileController.Control.Interlocks;
using PileController.Control.Modes;
using PileController.Control.Readings;

namespace PileController.Control.Decisions.Wording;

/// <summary>What the interlocks that act say, trips first, each with what to do.</summary>
internal static class InterlockWords
{
    public static void Add(StringBuilder text, Decision decision)
    {
        Add(text, decision, Verdict.Latched);
        Add(text, decision, Verdict.Acting);
    }

    private static void Add(StringBuilder text, Decision decision, Verdict verdict)
    {
        int count = Math.Min(decision.Verdicts.Length, InterlockTable.All.Count);
        for (int i = 0; i < count; i++)
        {
            Interlock row = InterlockTable.All[i];
            if (decision.Verdicts[i] != verdict || SaidElsewhere(row, decision))
            {
                continue;
            }

            text.Append(' ').Append(row.Sentence);
            if (row.Action != InterlockAction.Warn)
            {
                text.Append(' ').Append(row.Remedy);
            }
        }
    }

    // The frost guard has its own sentence, and probes that are not believed are named one by one.
    private static bool SaidElsewhere(Interlock row, Decision decision) =>
        (row.Action == InterlockAction.GuardFrost && decision.Mode == Mode.FrostGuard)
        || (row.Source == Signal.HouseBlind && decision.Readings[Channel.House].Quality != ReadingQuality.NotFitted);
}
