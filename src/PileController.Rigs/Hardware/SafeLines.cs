using System.Device.Gpio;
using PileController.Control.Decisions;
using PileController.Rigs.Hardware.Loads;
using PileController.Rigs.Hardware.Ports;

namespace PileController.Rigs.Hardware;

/// <summary>Puts every output of a real rig at its safe value without running it: for when the program that held them is gone.</summary>
public static class SafeLines
{
    // How often the end switches are looked at while the valve runs.
    private static readonly TimeSpan Look = TimeSpan.FromSeconds(0.2);

    /// <summary>How long the valve may run until it is where it is safe, s; 0 when it stays or there is none.</summary>
    /// <param name="hardware">What is fitted.</param>
    /// <param name="motion">How the valve moves.</param>
    public static double LongestSeconds(HardwareSettings hardware, ValveMotion motion) =>
        hardware.Valve.IsFitted && hardware.Valve.Safe != ValveSafe.Stays
            ? hardware.Valve.DeadTimeSeconds + (motion.TravelSeconds * (1 + ValveTravel.OverTravel)) + 1
            : 0;

    /// <summary>
    /// Switches the loads off, one after another, lets the lamp go, then runs the valve where it is safe. What cannot be taken
    /// keeps nothing else from being switched off.
    /// </summary>
    /// <param name="lines">Opens the chip of the lines; asked only when a line is wired.</param>
    /// <param name="hardware">Where the loads are.</param>
    /// <param name="motion">How the valve moves.</param>
    /// <param name="time">Clock, for the valve.</param>
    /// <param name="cancellation">Stops the valve where it is.</param>
    /// <returns>What went wrong, and what a person should look at besides.</returns>
    /// <exception cref="ArgumentException">Wiring that cannot be used together.</exception>
    public static async Task<SafeLinesResult> SetAsync(
        Func<GpioController> lines, HardwareSettings hardware, ValveMotion motion, TimeProvider time, CancellationToken cancellation)
    {
        using OutputPorts ports = OutputPorts.Of(hardware, lines);
        return await SetAsync(ports, hardware, motion, time, Task.Delay, cancellation).ConfigureAwait(false);
    }

    internal static async Task<SafeLinesResult> SetAsync(
        OutputPorts ports, HardwareSettings hardware, ValveMotion motion, TimeProvider time,
        Func<TimeSpan, CancellationToken, Task> wait, CancellationToken cancellation)
    {
        HardwareCheck.Require(hardware);
        List<string> faults = [];
        List<string> news = [];
        MotorValve? valve = null;
        foreach (Func<ILoad> open in Actuators.Of(hardware, motion, ports))
        {
            try
            {
                // Opening a load puts it off in the same deed.
                ILoad load = open();
                faults.AddRange(Fault(load.SwitchOff()));
                valve = load as MotorValve ?? valve;
            }
            catch (Exception error)
            {
                // Whatever it is: the other loads are switched off all the same.
                faults.Add(error.Message);
            }
        }

        if (hardware.LampLine is { } lamp)
        {
            LetGo(ports, lamp, hardware.ActiveLow, time, news);
        }

        if (valve is not null && hardware.Valve.Safe != ValveSafe.Stays)
        {
            await RunAsync(valve, time, wait, faults, news, cancellation).ConfigureAwait(false);
        }

        return new SafeLinesResult(faults, news);
    }

    // Where the kernel keeps a line as a dead program left it, the lamp would say for ever that all is well. It does no harm
    // itself, so its failing is no reason to cut the loads' supply.
    private static void LetGo(OutputPorts ports, int lamp, bool activeLow, TimeProvider time, List<string> news)
    {
        try
        {
            new HeldLine(ports.Lines, "lamp", lamp, activeLow, beats: false, time).LetGo(news);
        }
        catch (Exception error)
        {
            news.Add(error.Message);
        }
    }

    private static async Task RunAsync(
        MotorValve valve, TimeProvider time, Func<TimeSpan, CancellationToken, Task> wait, List<string> faults, List<string> news,
        CancellationToken cancellation)
    {
        long began = time.GetTimestamp();
        valve.Want(Outputs.Safe, valveIsHeld: false);
        try
        {
            while (true)
            {
                RigFaultException? fault = valve.Drive(time.GetElapsedTime(began).TotalSeconds, news);
                faults.AddRange(Fault(fault));
                if (fault is not null || valve.DueSeconds is not { } due)
                {
                    return;
                }

                await wait(TimeSpan.FromSeconds(Math.Min(due, Look.TotalSeconds)), cancellation).ConfigureAwait(false);
            }
        }
        catch (OperationCanceledException)
        {
            faults.Add("The valve was stopped on its way to where it is safe.");
        }
        finally
        {
            faults.AddRange(Fault(valve.SwitchOff()));
        }
    }

    private static IEnumerable<string> Fault(RigFaultException? fault) => fault is null ? [] : [fault.Message];
}

/// <summary>What came of putting the outputs at their safe values.</summary>
/// <param name="Faults">One sentence for each output that could not be; empty when all is safe.</param>
/// <param name="News">What a person should look at although all is safe.</param>
public sealed record SafeLinesResult(IReadOnlyList<string> Faults, IReadOnlyList<string> News);
