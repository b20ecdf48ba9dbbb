using System.Device.Gpio;

namespace PileController.Rigs.Hardware.Lines;

/// <summary>
/// A line of the chip that is read. It is opened without a pull of the chip's own: not every chip and driver can give
/// one, and the resistor belongs to the wiring.
/// </summary>
internal static class InputLine
{
    /// <summary>Opens it.</summary>
    /// <param name="controller">The chip's lines.</param>
    /// <param name="name">What hangs on it, for messages.</param>
    /// <param name="line">Its number.</param>
    /// <exception cref="RigFaultException">It cannot be opened as an input.</exception>
    public static void Open(GpioController controller, string name, int line)
    {
        try
        {
            controller.OpenPin(line, PinMode.Input);
            if (controller.GetPinMode(line) != PinMode.Input)
            {
                throw new InvalidOperationException("it stayed an output.");
            }
        }
        catch (Exception error)
        {
            throw new RigFaultException($"The line {line} of {name} cannot be opened as an input: {error.Message}", error);
        }
    }
}
