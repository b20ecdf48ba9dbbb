using System.Globalization;

namespace PileController.Rigs.Hardware.Ports;

/// <summary>
/// A PWM chip, found by the device it belongs to. Its number moves between kernels and boards; the device's path does not.
/// </summary>
internal sealed class PwmChip
{
    private readonly string _folder;

    private PwmChip(string device, string folder, int channels)
    {
        Device = device;
        _folder = folder;
        Channels = channels;
    }

    /// <summary>The device, as the settings name it.</summary>
    public string Device { get; }

    /// <summary>How many channels it has.</summary>
    public int Channels { get; }

    /// <summary>Finds the chip of a device. Nothing is guessed.</summary>
    /// <param name="device">The name of the device's folder, or the end of its path.</param>
    /// <param name="files">The kernel's files.</param>
    /// <exception cref="RigFaultException">No such chip, or several; the message names what was found.</exception>
    public static PwmChip Find(string device, PwmFiles files)
    {
        (string Folder, string Device)[] chips = [.. Chips(files.Root)];
        (string Folder, string Device)[] found = [.. chips.Where(chip => $"/{chip.Device}".EndsWith($"/{device.Trim('/')}", StringComparison.Ordinal))];
        if (found.Length != 1)
        {
            string seen = chips.Length == 0 ? "none" : string.Join(", ", chips.Select(chip => $"\"{chip.Device.TrimStart('/')}\""));
            throw new RigFaultException(
                $"Hardware.PwmChip is \"{device}\"; {(found.Length == 0 ? "no PWM chip" : $"{found.Length} PWM chips")} of that device found. Devices found: {seen}.");
        }

        try
        {
            int channels = int.Parse(files.Read(Path.Combine(found[0].Folder, "npwm")), CultureInfo.InvariantCulture);
            return new PwmChip(device, found[0].Folder, channels);
        }
        catch (Exception error)
        {
            throw new RigFaultException($"The PWM chip \"{device}\" does not tell its channels: {error.Message}", error);
        }
    }

    /// <summary>Throws when the chip has no such channel.</summary>
    /// <exception cref="RigFaultException">Tells which it has.</exception>
    public void Require(int channel)
    {
        if (channel < 0 || channel >= Channels)
        {
            throw new RigFaultException($"The PWM chip \"{Device}\" has no channel {channel}; it has 0 to {Channels - 1}.");
        }
    }

    /// <summary>Where a file of the chip stands.</summary>
    public string this[string file] => Path.Combine(_folder, file);

    private static IEnumerable<(string Folder, string Device)> Chips(string root)
    {
        if (!Directory.Exists(root))
        {
            yield break;
        }

        foreach (string entry in Directory.EnumerateFileSystemEntries(root, "pwmchip*").Order(StringComparer.Ordinal))
        {
            // Entries of a class are links into the tree of devices; a chip's "device" leads to what it belongs to.
            string folder = Followed(entry);
            string device = Followed(Path.Combine(folder, "device"));
            yield return (folder, device);
        }
    }

    private static string Followed(string path) =>
        Directory.ResolveLinkTarget(path, returnFinalTarget: true)?.FullName ?? path;
}
