namespace PileController.Alarms.Push;

/// <summary>Somewhere messages go.</summary>
internal interface IPushSink
{
    /// <summary>What people call it.</summary>
    string Name { get; }

    /// <summary>Sends a message.</summary>
    /// <exception cref="Exception">It was not taken; the message says why, without any secret.</exception>
    Task SendAsync(PushMessage message, CancellationToken cancellation);
}
