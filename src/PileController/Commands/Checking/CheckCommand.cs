using System.CommandLine;
using PileController.Commands.Shell;
using PileController.Settings;

namespace PileController.Commands.Checking;

/// <summary>check: lists everything that is wrong with a settings file.</summary>
internal static class CheckCommand
{
    private static readonly Argument<string?> Path = new("FILE")
    {
        Description = "The settings file.",
        Arity = ArgumentArity.ZeroOrOne,
    };

    private static readonly Option<bool> Defaults = new("--defaults")
    {
        Description = "Instead, print a settings file with every key, its default and what is allowed.",
    };

    private static readonly Option<bool> Json = Ask.Json();

    public static Command Create()
    {
        PileCommand command = new("check", "Lists everything that is wrong with a settings file.", "PileController check pile.json")
        {
            Path, Defaults, Json,
        };
        command.Validators.Add(result =>
        {
            if (result.GetValue(Path) is null && !result.GetValue(Defaults))
            {
                result.AddError("FILE is missing; allowed: the path of a settings file, or --defaults");
            }
        });
        command.SetAction(Run);
        return command;
    }

    private static int Run(ParseResult parse)
    {
        TextWriter output = parse.InvocationConfiguration.Output;
        if (parse.GetValue(Defaults))
        {
            output.Write(parse.GetValue(Json)
                ? PileSettings.AlderBank.CanonicalJson() + Environment.NewLine
                : SettingsFile.Explain(PileSettings.AlderBank));
            return ExitCodes.Done;
        }

        string path = parse.GetValue(Path)!;
        if (!SettingsSource.TryLoad(path, out SettingsResult result, out string? problem))
        {
            parse.InvocationConfiguration.Error.WriteLine($"FILE is \"{path}\": {problem}");
            return ExitCodes.WrongUse;
        }

        if (parse.GetValue(Json))
        {
            Answer.WriteJson(parse, new
            {
                Faults = result.Faults.Select(f => new { f.Path, f.Given, f.Allowed, f.Line }),
                Warnings = result.Warnings.Select(c => new { c.Path, c.Given, c.Says, c.Line }),
            });
        }
        else
        {
            WriteForPeople(output, path, result);
        }

        return result.Faults.Count == 0 ? ExitCodes.Done : ExitCodes.No;
    }

    private static void WriteForPeople(TextWriter output, string path, SettingsResult result)
    {
        foreach (string sentence in result.Faults.Select(fault => fault.Sentence).Concat(result.Warnings.Select(warning => $"Warning: {warning.Sentence}")))
        {
            output.WriteLine(sentence);
        }

        output.WriteLine(result.Faults.Count switch
        {
            0 => $"{path}: no fault found.",
            1 => $"{path}: 1 fault.",
            _ => $"{path}: {result.Faults.Count} faults.",
        });
    }
}
