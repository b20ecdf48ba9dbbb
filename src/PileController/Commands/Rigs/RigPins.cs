using System.CommandLine;
using PileController.Commands.Shell;
using PileController.Rigs;

namespace PileController.Commands.Rigs;

/// <summary>rig pins: which line of the chip does what.</summary>
internal static class RigPins
{
    private static readonly Option<string?> SettingsPath = new("--settings") { Description = "The settings file.", Required = true };
    private static readonly Option<bool> Markdown = new("--markdown") { Description = "Answer in a Markdown table." };
    private static readonly Option<bool> Json = Ask.Json();

    public static Command Create()
    {
        PileCommand command = new(
            "pins", "Lists the lines the settings give to the rig: number, direction, levels, and what each switches.",
            "PileController rig pins --settings hardware/examples/rig.json")
        {
            SettingsPath, Markdown, Json,
        };
        command.Validators.Add(result =>
        {
            if (result.GetValue(Markdown) && result.GetValue(Json))
            {
                result.AddError($"{Markdown.Name} and {Json.Name} are two forms of answer; allowed: one of them");
            }
        });
        command.SetAction(Run);
        return command;
    }

    private static int Run(ParseResult parse)
    {
        if (SettingsSource.Sound(parse, SettingsPath) is not { } settings)
        {
            return ExitCodes.WrongUse;
        }

        HardwareSettings hardware = settings.Rig.Hardware;
        if (parse.GetValue(Json))
        {
            Answer.WriteJson(parse, new
            {
                Chip = hardware.GpioChipLabel,
                settings.Rig.Simulated,
                Lines = InputPins.AndOutputs(settings.Rig),
                Channels = SignalList.Of(hardware),
                Unwired = PinMap.Unwired(hardware),
            });
            return ExitCodes.Done;
        }

        TextWriter output = parse.InvocationConfiguration.Output;
        if (parse.GetValue(Markdown))
        {
            PinText.WriteMarkdown(output, settings.Rig);
        }
        else
        {
            PinText.WriteColumns(output, settings.Rig);
        }

        if (settings.Rig.Simulated)
        {
            parse.InvocationConfiguration.Error.WriteLine("rig.kind is \"simulated\": none of these lines is driven.");
        }

        return ExitCodes.Done;
    }
}
