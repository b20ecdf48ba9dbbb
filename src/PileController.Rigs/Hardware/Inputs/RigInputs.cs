using System.Device.Gpio;
using PileController.Rigs.Hardware.I2c;
using PileController.Rigs.Hardware.Lines;
using PileController.Rigs.Hardware.OneWire;

namespace PileController.Rigs.Hardware.Inputs;

/// <summary>The input groups of a real rig. A new way of reading is a new group here.</summary>
internal static class RigInputs
{
    /// <summary>Opens them all; where one cannot be opened, those before it are closed again.</summary>
    /// <exception cref="RigFaultException">A line cannot be opened as an input. Buses and their devices are opened when they are asked.</exception>
    public static IReadOnlyList<IInputGroup> Open(
        GpioController controller, RigSettings settings, TimeProvider time, Action<string> report, InputPorts ports)
    {
        List<IInputGroup> groups = [];
        try
        {
            groups.Add(new SwitchInputs(controller, settings.Probes));
            groups.Add(new PulseInputs(controller, settings, time, report));
            groups.Add(new Thermometers(settings, time, new BusLimits(), ports.ReadText, ports.WriteText));
            groups.Add(new I2cInputs(settings.Probes, time, BusLimits.I2c, ports.OpenI2c, ports.Pause, report));
            return groups;
        }
        catch
        {
            Close(groups);
            throw;
        }
    }

    /// <summary>Ends threads and timers.</summary>
    public static void Close(IReadOnlyList<IInputGroup> groups)
    {
        foreach (IInputGroup group in groups)
        {
            group.Dispose();
        }
    }
}
