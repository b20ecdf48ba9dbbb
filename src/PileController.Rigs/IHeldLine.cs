namespace PileController.Rigs;

/// <summary>
/// A line that is held only as long as somebody keeps saying that all is well. What hangs on it acts when it is let go: a
/// lamp goes on, a timer lets the loads fall. What is silent, dead or without power lets it go.
/// </summary>
public interface IHeldLine
{
    /// <summary>Says how things are. Good for ten seconds; then it counts as not well.</summary>
    /// <param name="allIsWell">False lets the line go.</param>
    void Say(bool allIsWell);
}
