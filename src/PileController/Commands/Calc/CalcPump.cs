using System.CommandLine;
using System.Diagnostics.CodeAnalysis;
using PileController.Commands.Shell;
using PileController.Parts;

namespace PileController.Commands.Calc;

/// <summary>calc pump: where a measured pump settles on a loop; several are compared.</summary>
internal static class CalcPump
{
    private static readonly Option<string[]> Pumps = new("--pump")
    {
        Description = "File of a measured pump; several are compared.",
        HelpName = "FILE",
        AllowMultipleArgumentsPerToken = true,
        DefaultValueFactory = _ => [],
    };

    private static readonly Option<string?> Loop = new("--loop") { Description = "File of the loop.", HelpName = "FILE" };

    private static readonly Option<string?> Explain = Ask.Of<string?>(
        "--explain", "Print a commented file to begin with: pump or loop.", TryReadPart);

    private static readonly Option<bool> Json = Ask.Json();

    public static Command Create()
    {
        PileCommand command = new(
            "pump", "Flow, head and energy of a measured pump on a loop; with several pumps, a comparison.",
            "PileController calc pump --pump hardware/examples/pump-a.json --loop hardware/examples/loop.json")
        {
            Pumps, Loop, Explain, Json,
        };
        command.SetAction(Run);
        return command;
    }

    private static int Run(ParseResult parse)
    {
        if (parse.GetValue(Explain) is { } part)
        {
            parse.InvocationConfiguration.Output.Write(part == "pump" ? PartExamples.Pump : PartExamples.Loop);
            return ExitCodes.Done;
        }

        TextWriter error = parse.InvocationConfiguration.Error;
        string[] paths = parse.GetValue(Pumps)!;
        string? loopPath = parse.GetValue(Loop);
        if (paths.Length == 0)
        {
            error.WriteLine("--pump is missing; allowed: the path of a pump's file, for which --explain pump prints an example");
        }

        if (loopPath is null)
        {
            error.WriteLine("--loop is missing; allowed: the path of a loop's file, for which --explain loop prints an example");
        }

        if (paths.Length == 0 || loopPath is null)
        {
            return ExitCodes.WrongUse;
        }

        // All files are read before any complaint ends the work: every fault is told at once.
        PumpPart?[] pumps = [.. paths.Select(path => PartSource.Sound(error, Pumps.Name, path, PumpFields.Table, new PumpPart(), PumpChecks.Of))];
        LoopPart? loop = PartSource.Sound(error, Loop.Name, loopPath, LoopPartFields.Table, new LoopPart(), LoopPartFields.Check);
        if (loop is null || pumps.Any(pump => pump is null))
        {
            return ExitCodes.WrongUse;
        }

        PumpAnswer[] answers = [.. pumps.Select(pump => PumpAnswer.Of(pump!, loop))];
        if (parse.GetValue(Json))
        {
            WriteJson(parse, answers);
        }
        else if (answers is [PumpAnswer only])
        {
            PumpWords.Tell(parse, only, loop);
        }
        else
        {
            PumpWords.Compare(parse, answers, loop);
        }

        return ExitCodes.Done;
    }

    private static void WriteJson(ParseResult parse, PumpAnswer[] answers)
    {
        if (answers is [PumpAnswer only])
        {
            Answer.WriteJson(parse, only);
        }
        else
        {
            Answer.WriteJson(parse, new { Pumps = answers });
        }
    }

    private static bool TryReadPart(string text, out string? part, [NotNullWhen(false)] out string? allowed)
    {
        part = text.ToLowerInvariant();
        allowed = part is "pump" or "loop" ? null : "pump or loop";
        return allowed is null;
    }
}
