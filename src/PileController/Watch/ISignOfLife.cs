namespace PileController.Watch;

/// <summary>Something outside that acts by itself when it is no longer told that all is well.</summary>
public interface ISignOfLife
{
    /// <summary>Says how things are. Called about once a second; never throws and never waits.</summary>
    /// <param name="sickness">Null while all is well, else what is not, in a sentence.</param>
    void Say(string? sickness);
}
