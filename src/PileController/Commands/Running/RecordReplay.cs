using System.CommandLine;
using PileController.Commands.Shell;
using PileController.Control;
using PileController.Records;
using PileController.Records.Checking;
using PileController.Serving;
using PileController.Settings;

namespace PileController.Commands.Running;

/// <summary>record replay: runs the recorded ticks again and compares every bit, or tries other settings on a stretch.</summary>
internal static class RecordReplay
{
    private static readonly Option<string> Data = RecordAsk.Data();
    private static readonly Option<string?> With = new("--with") { Description = "Other settings, whose decisions are compared over a stretch." };
    private static readonly Option<long> From = RecordAsk.Moment("--from", "First moment of that stretch; the evening before the last night, 18:00, when left out.", long.MinValue);
    private static readonly Option<long> To = RecordAsk.Moment("--to", "First moment after it; the morning after, 09:00, when left out.", long.MinValue);
    private static readonly Option<bool> Json = Ask.Json();

    public static Command Create()
    {
        PileCommand command = new(
            "replay", "Runs every recorded tick through control again and compares the decisions bit for bit; or tells what other settings would have decided.",
            "PileController record replay --data DIR --with pile.json")
        {
            Data, With, From, To, Json,
        };
        command.Validators.Add(result =>
        {
            bool from = result.GetResult(From) is { Implicit: false };
            bool to = result.GetResult(To) is { Implicit: false };
            if ((from || to) && result.GetResult(With) is not { Implicit: false })
            {
                result.AddError($"{(from ? From.Name : To.Name)} tells where other settings are tried; allowed: together with {With.Name}");
            }

            if (from && to && result.GetValue(From) >= result.GetValue(To))
            {
                result.AddError($"{From.Name} must be before {To.Name}");
            }
        });
        command.SetAction(Run);
        return command;
    }

    private static int Run(ParseResult parse)
    {
        string folder = parse.GetValue(Data)!;
        DataFolder data = new(folder);
        try
        {
            return parse.GetValue(With) is null ? Again(parse, data) : Otherwise(parse, data);
        }
        catch (Exception e) when (e is IOException or InvalidDataException)
        {
            return RecordAsk.Refuse(parse, folder, e.Message);
        }
    }

    private static int Again(ParseResult parse, DataFolder data)
    {
        ReplayReport report = RecordReplayer.Run(data.Path, origin => StepFor(data, origin));
        RecordOrigin here = DataFolder.Origin(PileSettings.AlderBank);
        bool same = report.Identical == report.Ticks && report.FirstDifference is null && report.Problems.Count == 0;
        if (parse.GetValue(Json))
        {
            Answer.WriteJson(parse, new
            {
                report.Ticks,
                report.Identical,
                Share = report.Ticks > 0 ? (double)report.Identical / report.Ticks : 1,
                SameBuild = report.Stretches.All(stretch => IsFrom(here, stretch)),
                report.FirstDifference,
                report.Stretches,
                report.Problems,
            });
        }
        else
        {
            ReplayText.Tell(parse.InvocationConfiguration.Output, report, here);
        }

        return same ? ExitCodes.Done : ExitCodes.No;
    }

    private static int Otherwise(ParseResult parse, DataFolder data)
    {
        if (SettingsSource.Sound(parse, With) is not { } settings)
        {
            return ExitCodes.WrongUse;
        }

        CourseComparison comparison = CourseComparer.Run(
            data.Path, Given(parse.GetValue(From)), Given(parse.GetValue(To)), origin => StepFor(data, origin), Step(settings));
        if (parse.GetValue(Json))
        {
            Answer.WriteJson(parse, comparison);
        }
        else
        {
            ComparisonText.Tell(parse.InvocationConfiguration.Output, comparison);
        }

        return comparison.Ticks > 0 && comparison.Problems.Count == 0 ? ExitCodes.Done : ExitCodes.No;
    }

    /// <summary>Whether a stretch was made by this build on this platform.</summary>
    public static bool IsFrom(RecordOrigin here, ReplayStretch stretch) =>
        stretch.Origin.Build == here.Build && stretch.Origin.Platform == here.Platform;

    private static long? Given(long moment) => moment == long.MinValue ? null : moment;

    private static ReplayStep? StepFor(DataFolder data, RecordOrigin origin) =>
        data.FindSettings(origin.SettingsHash) is { } settings ? Step(settings) : null;

    private static ReplayStep Step(PileSettings settings) =>
        (memory, readings, commands, at) => Controller.Step(settings.Control, memory, readings, commands, at);
}
