using System.Device.I2c;

namespace PileController.Rigs.Hardware.Inputs;

/// <summary>How the inputs reach the machine; the defaults are the real one.</summary>
internal sealed record InputPorts
{
    /// <summary>Reads a file's text, or throws.</summary>
    public Func<string, string> ReadText { get; init; } = File.ReadAllText;

    /// <summary>Writes a file's text, or throws.</summary>
    public Action<string, string> WriteText { get; init; } = File.WriteAllText;

    /// <summary>Opens the device at an address of an I2C bus, or throws.</summary>
    public Func<I2cConnectionSettings, I2cDevice> OpenI2c { get; init; } = I2cDevice.Create;

    /// <summary>Waits on a bus's own thread.</summary>
    public Action<TimeSpan> Pause { get; init; } = Thread.Sleep;
}
