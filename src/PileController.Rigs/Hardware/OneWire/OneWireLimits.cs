namespace PileController.Rigs.Hardware.OneWire;

/// <summary>How long the probe bus may take.</summary>
internal sealed record OneWireLimits
{
    /// <summary>Longest a tick waits for the probes; what has not answered then is shown with its age.</summary>
    public TimeSpan Deadline { get; init; } = TimeSpan.FromSeconds(2);

    /// <summary>
    /// Longest one probe may take. At 12 bit a conversion takes at most 750 ms (SEN-021, DS18B20 data sheet rev
    /// 042208); a kernel that tries three times needs the rest.
    /// </summary>
    public TimeSpan Probe { get; init; } = TimeSpan.FromSeconds(3);

    /// <summary>Sweeps a probe sits out after it took longer than <see cref="Probe"/>, so that it holds up no other.</summary>
    public int SweepsOut { get; init; } = 5;

    /// <summary>
    /// Age up to which an answer counts as of this tick: eleven probes on one wire take over eight seconds.
    /// </summary>
    public TimeSpan Fresh { get; init; } = TimeSpan.FromSeconds(15);

    /// <summary>Age after which an old answer is no answer.</summary>
    public TimeSpan Dead { get; init; } = TimeSpan.FromSeconds(60);
}
