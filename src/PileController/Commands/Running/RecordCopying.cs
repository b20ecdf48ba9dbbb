using System.CommandLine;
using PileController.Commands.Shell;
using PileController.Records.Backups;

namespace PileController.Commands.Running;

/// <summary>What making a backup and bringing one back have in common.</summary>
internal static class RecordCopying
{
    /// <summary>The folder of the backup.</summary>
    public static Argument<string> Backup(string description) => new("DIR") { Description = description };

    /// <summary>Does it and tells what was done; says why when it cannot.</summary>
    /// <param name="parse">The command line.</param>
    /// <param name="json">Whether a machine asks.</param>
    /// <param name="done">What was done to the files, a word or two.</param>
    /// <param name="copy">Does it.</param>
    /// <param name="placeOf">What was given that an error is about.</param>
    public static int Run(ParseResult parse, bool json, string done, Func<CopyReport> copy, Func<Exception, string> placeOf)
    {
        TextWriter error = parse.InvocationConfiguration.Error;
        CopyReport report;
        try
        {
            report = copy();
        }
        catch (InvalidDataException damaged)
        {
            error.WriteLine($"{placeOf(damaged)}: {damaged.Message.TrimEnd('.')}");
            return ExitCodes.No;
        }
        catch (Exception refused) when (refused is IOException or UnauthorizedAccessException)
        {
            error.WriteLine($"{placeOf(refused)}: {refused.Message.TrimEnd('.')}");
            return ExitCodes.WrongUse;
        }

        if (json)
        {
            Answer.WriteJson(parse, report);
        }
        else
        {
            Tell(parse.InvocationConfiguration.Output, report, done);
        }

        return report.Check.IsClean ? ExitCodes.Done : ExitCodes.No;
    }

    private static void Tell(TextWriter output, CopyReport report, string done)
    {
        foreach (string problem in report.Check.Problems)
        {
            output.WriteLine(problem);
        }

        output.WriteLine(RecordAsk.Sum(report.Check));
        if (report.SetAside is { } aside)
        {
            output.WriteLine($"What was there before is now in '{aside}'.");
        }

        output.WriteLine($"{done} {report.Files} files, {report.Bytes} bytes, each read again: '{report.Directory}'.");
        if (!report.Check.IsClean)
        {
            output.WriteLine("The copy is true to the byte: what is wrong in it was wrong in the original.");
        }
    }
}
