using System.CommandLine;
using PileController.Commands.Shell;
using PileController.Control;
using PileController.Records;
using PileController.Records.Checking;
using PileController.Serving;
using PileController.Settings;

namespace PileController.Commands.Running;

/// <summary>record replay: runs the recorded ticks again and compares every bit.</summary>
internal static class RecordReplay
{
    private static readonly Option<string> Data = RecordAsk.Data();
    private static readonly Option<bool> Json = Ask.Json();

    public static Command Create()
    {
        PileCommand command = new(
            "replay", "Runs every recorded tick through control again and compares the decisions bit for bit.",
            "PileController record replay --data DIR")
        {
            Data, Json,
        };
        command.SetAction(Run);
        return command;
    }

    private static int Run(ParseResult parse)
    {
        string folder = parse.GetValue(Data)!;
        DataFolder data = new(folder);
        ReplayReport report;
        try
        {
            report = RecordReplayer.Run(folder, origin => StepFor(data, origin));
        }
        catch (Exception e) when (e is DirectoryNotFoundException or RecordInUseException or IOException)
        {
            return RecordAsk.Refuse(parse, folder, e.Message);
        }

        RecordOrigin here = DataFolder.Origin(PileSettings.AlderBank);
        bool sameBuild = report.Origins.All(o => o.Build == here.Build && o.Platform == here.Platform);
        bool same = report.Identical == report.Ticks && report.FirstDifference is null && report.Problems.Count == 0;
        if (parse.GetValue(Json))
        {
            Answer.WriteJson(parse, new
            {
                report.Ticks,
                report.Identical,
                Share = report.Ticks > 0 ? (double)report.Identical / report.Ticks : 1,
                sameBuild,
                report.FirstDifference,
                report.Problems,
            });
        }
        else
        {
            Tell(parse.InvocationConfiguration.Output, report, sameBuild);
        }

        return same ? ExitCodes.Done : ExitCodes.No;
    }

    private static ReplayStep? StepFor(DataFolder data, RecordOrigin origin) =>
        data.FindSettings(origin.SettingsHash) is { } settings
            ? (memory, readings, commands, at) => Controller.Step(settings.Control, memory, readings, commands, at)
            : null;

    private static void Tell(TextWriter output, ReplayReport report, bool sameBuild)
    {
        foreach (string problem in report.Problems)
        {
            output.WriteLine(problem);
        }

        output.WriteLine($"{report.Identical} of {report.Ticks} ticks identical to the bit.");
        if (report.FirstDifference is { } first)
        {
            output.WriteLine($"First difference at tick {first.Sequence}, {DateTimeOffset.FromUnixTimeMilliseconds(first.UtcMilliseconds):yyyy-MM-dd HH:mm:ss}Z: {first.What}");
        }

        if (!sameBuild)
        {
            output.WriteLine("Some ticks were made by another build or on another platform; those may differ.");
        }
    }
}
