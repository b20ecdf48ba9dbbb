using System.Globalization;
using PileController.Control.Decisions;
using PileController.Control.Regulation;
using PileController.Rigs.Hardware.Ports;

namespace PileController.Rigs.Hardware.Loads;

/// <summary>Makes the actuators the settings tell of.</summary>
internal static class Actuators
{
    /// <summary>How each actuator that is fitted is opened, the pump first. None is opened yet.</summary>
    /// <param name="hardware">What is fitted and where.</param>
    /// <param name="motion">How the valve moves.</param>
    /// <param name="ports">Opens outputs.</param>
    /// <exception cref="ArgumentException">A valve that cannot be driven so.</exception>
    public static IReadOnlyList<Func<ILoad>> Of(HardwareSettings hardware, ValveMotion motion, OutputPorts ports)
    {
        List<Func<ILoad>> loads = [];
        Add("pump", hardware.Pump, hardware.PumpPin, outputs => outputs.PumpDuty);
        Add("blower", hardware.Blower, hardware.BlowerPin, outputs => outputs.BlowerDuty);
        if (hardware.BackupLine is { } backup)
        {
            // A heater's relay is on or off, whatever the pump's gate can do.
            loads.Add(() => new SwitchedLoad("backup heat", ports.Line("backup heat", backup), new SlowDuty(0), o => o.BackupOn ? 1 : 0));
        }

        if (hardware.Valve.IsFitted)
        {
            Require(hardware.Valve, motion);
            loads.Add(() => Valve(hardware.Valve, motion, ports));
        }

        return loads;

        void Add(string name, LoadSettings load, int? line, Func<Outputs, double> wanted)
        {
            if (load.Drive != LoadDrive.Line)
            {
                SignalMap map = new(load.Least, load.Most, load.Inverted);

                // The relay in series first: opened, it takes the load off whatever the signal does.
                loads.Add(() =>
                {
                    IOutput? series = line is { } relay ? ports.Line(name, relay) : null;
                    return new ModulatedLoad(name, ports.Signal(load), map, series, wanted);
                });
            }
            else if (line is { } number)
            {
                loads.Add(() => new SwitchedLoad(name, ports.Line(name, number), new SlowDuty(hardware.DutyPeriodSeconds), wanted));
            }
        }
    }

    private static MotorValve Valve(ValveSettings valve, ValveMotion motion, OutputPorts ports)
    {
        IOutput open = ports.Line("valve", valve.OpenLine!.Value);
        IOutput shut = ports.Line("valve", valve.ShutLine!.Value);
        ValveEnds? ends = motion.Feedback == ValveFeedback.EndSwitches
            ? new ValveEnds(ports.Lines, valve.OpenEndLine!.Value, valve.ShutEndLine!.Value, valve.EndsActiveLow)
            : null;
        return new MotorValve(open, shut, ends, motion, valve);
    }

    private static void Require(ValveSettings valve, ValveMotion motion)
    {
        if (!(motion.TravelSeconds > 0))
        {
            throw new ArgumentException(
                string.Create(CultureInfo.InvariantCulture, $"ValveTravelSeconds is {motion.TravelSeconds}; a valve that is wired needs a time above 0."), nameof(motion));
        }

        if (motion.Feedback == ValveFeedback.EndSwitches && (valve.OpenEndLine is null || valve.ShutEndLine is null))
        {
            throw new ArgumentException("Hardware.Valve.OpenEndLine or ShutEndLine is none; end switches need both.", nameof(valve));
        }
    }
}
