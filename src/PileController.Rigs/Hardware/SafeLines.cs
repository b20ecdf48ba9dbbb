using System.Device.Gpio;

namespace PileController.Rigs.Hardware;

/// <summary>Puts every output of a real rig at its safe value without running it: for when the program that held them is gone.</summary>
public static class SafeLines
{
    /// <summary>Switches the loads off, one after another; a line that cannot be taken keeps no other from being switched off.</summary>
    /// <param name="controller">The chip's lines.</param>
    /// <param name="hardware">Where the loads are.</param>
    /// <returns>What went wrong, one sentence a line; empty when all is safe.</returns>
    /// <exception cref="ArgumentException">Lines that cannot be used together.</exception>
    public static IReadOnlyList<string> Set(GpioController controller, HardwareSettings hardware)
    {
        HardwareCheck.Require(hardware);
        List<string> faults = [];
        foreach ((string name, int? pin) in Loads(hardware))
        {
            if (pin is not { } line)
            {
                continue;
            }

            try
            {
                // Opening a load puts its line off in the same call.
                if (new SwitchedLoad(controller, name, line, hardware).SwitchOff() is { } fault)
                {
                    faults.Add(fault.Message);
                }
            }
            catch (RigFaultException fault)
            {
                faults.Add(fault.Message);
            }
        }

        return faults;
    }

    private static (string Name, int? Pin)[] Loads(HardwareSettings hardware) => [("pump", hardware.PumpPin), ("blower", hardware.BlowerPin)];
}
