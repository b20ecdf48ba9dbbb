using System.Text;
using PileController.Control.Decisions.Wording;
using PileController.Control.Modes;

namespace PileController.Control.Decisions;

/// <summary>
/// Puts a decision into plain words: first one sentence of what is done and why; then, only where there is something to
/// say, what else the grower should know.
/// </summary>
public static class Sentence
{
    /// <summary>
    /// The sentence for <paramref name="decision"/>. Made from the decision alone, so a replay says the same.
    /// </summary>
    /// <param name="decision">The decision.</param>
    /// <param name="american">True for °F, BTU/h and gal/min; false for °C, W and L/min.</param>
    public static string Of(Decision decision, bool american = false)
    {
        Figures figures = new(american);
        StringBuilder text = new(ModeWords.Of(decision, figures));
        InterlockWords.Add(text, decision);
        HoldWords.Add(text, decision);
        if (decision.Mode is not (Mode.Tripped or Mode.Servicing))
        {
            DoubtWords.Add(text, decision);
        }

        TonightWords.Add(text, decision, figures);
        if (decision.Note is { Length: > 0 } note)
        {
            text.Append(' ').Append(note);
        }

        return text.ToString();
    }
}
