namespace PileController.Rigs;

/// <summary>
/// A lamp or buzzer that fails on: it is off only as long as somebody keeps saying that all is well. What is silent, dead
/// or without power lights it.
/// </summary>
public interface IAlarmLamp
{
    /// <summary>Says how things are. Good for ten seconds; then it counts as not well.</summary>
    /// <param name="allIsWell">False lights the lamp.</param>
    void Say(bool allIsWell);
}
