using System.CommandLine;
using System.Device.Gpio;
using PileController.Commands.Shell;
using PileController.Rigs.Hardware;

namespace PileController.Commands.Rigs;

/// <summary>rig safe: puts every output at its safe value, for when the service that held them is gone.</summary>
internal static class RigSafeCommand
{
    private static readonly Option<string?> SettingsPath = new("--settings") { Description = "The settings file of the rig." };

    public static Command Create()
    {
        PileCommand command = new(
            "safe", "Switches every output off and ends. Run by the service manager after the service has ended, however it ended.",
            "PileController rig safe --settings /etc/pile-controller/pile.json")
        {
            SettingsPath,
        };
        command.SetAction((parse, _) => Task.FromResult(Run(parse)));
        return command;
    }

    private static int Run(ParseResult parse)
    {
        TextWriter output = parse.InvocationConfiguration.Output;
        TextWriter error = parse.InvocationConfiguration.Error;
        if (SettingsSource.Sound(parse, SettingsPath) is not { } settings)
        {
            return ExitCodes.WrongUse;
        }

        if (settings.Rig.Simulated)
        {
            output.WriteLine("The rig is simulated: there is nothing to switch off.");
            return ExitCodes.Done;
        }

        try
        {
            using GpioController controller = GpioChips.Open(settings.Rig.Hardware.GpioChipLabel);
            IReadOnlyList<string> faults = SafeLines.Set(controller, settings.Rig.Hardware);
            foreach (string fault in faults)
            {
                error.WriteLine(fault);
            }

            output.WriteLine(faults.Count == 0 ? "All outputs are off." : "Not all outputs could be switched off: cut their supply by hand.");
            return faults.Count == 0 ? ExitCodes.Done : ExitCodes.No;
        }
        catch (RigFaultException fault)
        {
            error.WriteLine(fault.Message);
            error.WriteLine("The outputs could not be switched off: cut their supply by hand.");
            return ExitCodes.No;
        }
    }
}
