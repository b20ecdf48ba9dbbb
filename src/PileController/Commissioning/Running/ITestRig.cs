using PileController.Control.Decisions;

namespace PileController.Commissioning.Running;

/// <summary>A rig on which a test is made: it lives by the ordinary tick, interlocks and all.</summary>
internal interface ITestRig : IAsyncDisposable
{
    /// <summary>Whether it is simulated.</summary>
    bool Simulated { get; }

    /// <summary>Wall time of the newest tick, ms since 1970-01-01T00:00Z.</summary>
    long UtcMilliseconds { get; }

    /// <summary>Waits until a tick is due, makes it, and says what it came to.</summary>
    /// <param name="commands">What is asked for at it.</param>
    /// <param name="cancellation">Gives up waiting.</param>
    ValueTask<Look> TickAsync(IReadOnlyList<Command> commands, CancellationToken cancellation);
}

/// <summary>Who is led through a test.</summary>
internal interface IGrower
{
    /// <summary>Says something to them.</summary>
    void Hear(string line);

    /// <summary>Looks at the test after a tick; hands over an answer where one is waited for and given.</summary>
    Reply? Reply(Walk walk);
}

/// <summary>An answer.</summary>
/// <param name="Seconds">When it was given, s on the clock of the looks.</param>
/// <param name="Figure">The number, or null.</param>
/// <param name="Text">The words, or null.</param>
/// <param name="GivesUp">True: the test is to end.</param>
internal sealed record Reply(double Seconds, double? Figure, string? Text, bool GivesUp = false);
