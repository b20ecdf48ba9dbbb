namespace PileController.Rigs.Hardware.Inputs;

/// <summary>How long a bus of probes may take. The defaults are those of 1-Wire.</summary>
internal sealed record BusLimits
{
    /// <summary>An I2C device is through within a third of a second; the kernel gives a hung one up after a second (from memory).</summary>
    public static BusLimits I2c { get; } = new() { Device = TimeSpan.FromSeconds(0.8), SlowRunning = 2 };

    /// <summary>Longest a tick waits for the probes; what has not answered then is shown with its age.</summary>
    public TimeSpan Deadline { get; init; } = TimeSpan.FromSeconds(2);

    /// <summary>
    /// Longest one device may take. At 12 bit a conversion takes at most 750 ms (SEN-021, DS18B20 data sheet rev
    /// 042208); a kernel that tries three times needs the rest.
    /// </summary>
    public TimeSpan Device { get; init; } = TimeSpan.FromSeconds(3);

    /// <summary>Slow answers running after which a device sits out, where none took as long as <see cref="Deadline"/>; one alone may be chance.</summary>
    public int SlowRunning { get; init; } = 1;

    /// <summary>Sweeps a device sits out after it took longer than <see cref="Device"/>, so that it holds up no other.</summary>
    public int SweepsOut { get; init; } = 5;

    /// <summary>
    /// Age up to which an answer counts as of this tick: eleven probes on one wire that convert one by one take over
    /// eight seconds.
    /// </summary>
    public TimeSpan Fresh { get; init; } = TimeSpan.FromSeconds(15);

    /// <summary>Age after which an old answer is no answer.</summary>
    public TimeSpan Dead { get; init; } = TimeSpan.FromSeconds(60);
}
