namespace PileController.Control.Decisions;

/// <summary>Puts a decision into one plain sentence.</summary>
public static class Sentence
{
    /// <summary>The sentence for <paramref name="decision"/>. Made from the decision alone, so a replay says the same.</summary>
    public static string Of(Decision decision) => $"{decision.Mode}: {decision.Curb}.";
}
