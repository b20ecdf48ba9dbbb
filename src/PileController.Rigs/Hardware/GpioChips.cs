using System.Device.Gpio;

namespace PileController.Rigs.Hardware;

/// <summary>Finds the chip the settings name. The chip's number moves between kernels and boards; its label does not.</summary>
public static class GpioChips
{
    /// <summary>Opens the chip of a label. Nothing is guessed: no other chip, no other kind of driver.</summary>
    /// <param name="label">The label, as the kernel gives it (<c>gpioinfo</c> shows it).</param>
    /// <exception cref="RigFaultException">No library, no chip of that label, or more than one; the message names what was found.</exception>
    public static GpioController Open(string label) => new(Choose(label, GpioLibrary.All));

    internal static GpioDriver Choose(string label, IReadOnlyList<GpioLibrary> libraries)
    {
        GpioLibrary library = libraries.FirstOrDefault(candidate => candidate.IsInstalled())
            ?? throw new RigFaultException(
                $"The GPIO chip \"{label}\" cannot be opened: none of {string.Join(", ", libraries.Select(l => l.Name))} is installed.");
        IReadOnlyList<GpioChipInfo> chips = Chips(label, library);
        GpioChipInfo[] found = [.. chips.Where(chip => chip.Label == label)];
        return found.Length == 1
            ? Driver(label, library, found[0])
            : throw new RigFaultException(
                $"Hardware.GpioChipLabel is \"{label}\"; {library.Name} finds {Count(found.Length)} of that label. Labels found: {Labels(chips)}.");
    }

    private static IReadOnlyList<GpioChipInfo> Chips(string label, GpioLibrary library)
    {
        try
        {
            return library.Chips();
        }
        catch (Exception error)
        {
            throw new RigFaultException(
                $"The GPIO chip \"{label}\" cannot be looked for: {library.Name} says {error.Message}", error);
        }
    }

    private static GpioDriver Driver(string label, GpioLibrary library, GpioChipInfo chip)
    {
        try
        {
            return library.Driver(chip);
        }
        catch (Exception error)
        {
            throw new RigFaultException(
                $"The GPIO chip \"{label}\" cannot be opened through {library.Name}: {error.Message}", error);
        }
    }

    private static string Count(int chips) => chips == 0 ? "no chip" : $"{chips} chips";

    private static string Labels(IReadOnlyList<GpioChipInfo> chips) =>
        chips.Count == 0 ? "none" : string.Join(", ", chips.Select(chip => $"\"{chip.Label}\" ({chip.NumLines} lines)"));
}
