namespace PileController.FarSide.Kernel;

/// <summary>The lines of the board's chip, seen from the wires' side.</summary>
/// <param name="config">Folder the chip was made in.</param>
internal sealed class GpioBank(string config)
{
    /// <summary>The file that tells how a line is driven: "1" or "0".</summary>
    public KernelFile Level(int line) => new(() => Find(line, "value"), FileAccess.Read);

    /// <summary>The file that pulls a line up or down.</summary>
    public KernelFile Pull(int line) => new(() => Find(line, "pull"), FileAccess.Write);

    private string? Find(int line, string name)
    {
        string device = Path.Combine(config, "dev_name");
        string chip = Path.Combine(config, "bank0", "chip_name");
        return File.Exists(device) && File.Exists(chip)
            ? $"/sys/devices/platform/{File.ReadAllText(device).Trim()}/{File.ReadAllText(chip).Trim()}/sim_gpio{line}/{name}"
            : null;
    }
}
