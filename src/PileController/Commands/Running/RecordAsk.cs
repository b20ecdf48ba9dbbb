using System.CommandLine;
using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using PileController.Commands.Shell;
using PileController.Records.Checking;

namespace PileController.Commands.Running;

/// <summary>The options that reading a record has in common.</summary>
internal static class RecordAsk
{
    /// <summary>The folder.</summary>
    public static Option<string> Data() => new("--data") { Description = "Folder of the record.", Required = true };

    /// <summary>A moment.</summary>
    public static Option<long> Moment(string name, string description, long otherwise) =>
        Ask.Of<long>(name, description, ReadMoment).Unless(otherwise);

    /// <summary>Comma-separated values for a spreadsheet.</summary>
    public static Option<bool> Csv() => new("--csv") { Description = "Answer in comma-separated values." };

    /// <summary>Refuses a span that ends before it begins, and two forms of answer at once.</summary>
    public static void CheckSpanAndForm(Command command, Option<long> from, Option<long> to, Option<bool> json, Option<bool> csv, Option<string?> parquet) =>
        command.Validators.Add(result =>
        {
            bool bothGiven = result.GetResult(from) is { Implicit: false } && result.GetResult(to) is { Implicit: false };
            if (bothGiven && result.GetValue(from) >= result.GetValue(to))
            {
                result.AddError($"{from.Name} must be before {to.Name}");
            }

            string[] forms = [.. new[] { (json.Name, result.GetValue(json)), (csv.Name, result.GetValue(csv)), (parquet.Name, result.GetValue(parquet) is not null) }
                .Where(form => form.Item2).Select(form => form.Name)];
            if (forms.Length > 1)
            {
                result.AddError($"{forms[0]} and {forms[1]} are two forms of answer; allowed: one of them");
            }
        });

    /// <summary>
    /// Asks a record, which a service may have open, and tells the answer; says why when it cannot. The record is
    /// closed before anything is told: whoever reads the answer may take long.
    /// </summary>
    public static int With<T>(
        ParseResult parse, Option<string> data, Func<RecordReader, Action<string>, T> ask, Action<T, TextWriter> tell)
    {
        string folder = parse.GetValue(data)!;
        List<string> problems = [];
        T answer;
        try
        {
            using RecordReader reader = RecordReader.Open(folder);
            problems.AddRange(reader.Problems);
            answer = ask(reader, problems.Add);
        }
        catch (IOException failed)
        {
            return Refuse(parse, folder, failed.Message);
        }

        tell(answer, parse.InvocationConfiguration.Output);
        foreach (string problem in problems)
        {
            parse.InvocationConfiguration.Error.WriteLine(problem);
        }

        return problems.Count == 0 ? ExitCodes.Done : ExitCodes.No;
    }

    /// <summary>What a check found, in a line.</summary>
    public static string Sum(VerifyReport report) =>
        $"{report.Ticks} ticks in {report.Blocks} blocks, {report.FirstSequence} to {report.LastSequence}; {report.Decisions} decisions; "
        + (report.IsClean ? "nothing wrong." : report.Problems.Count == 1 ? "1 problem." : $"{report.Problems.Count} problems.");

    /// <summary>Makes one JSON array of JSON lines, one element a line.</summary>
    public static void WriteArray(TextWriter output, Action<TextWriter> writeLines)
    {
        using StringWriter lines = new();
        writeLines(lines);
        string[] elements = lines.ToString().Split('\n', StringSplitOptions.RemoveEmptyEntries);
        output.WriteLine($"[{string.Join(",\n", elements)}]");
    }

    /// <summary>Says why a folder cannot be read.</summary>
    public static int Refuse(ParseResult parse, string folder, string why)
    {
        parse.InvocationConfiguration.Error.WriteLine($"--data is \"{folder}\": {why}");
        return ExitCodes.WrongUse;
    }

    private static bool ReadMoment(string text, out long value, [NotNullWhen(false)] out string? allowed)
    {
        allowed = null;
        if (DateTimeOffset.TryParse(text, CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal, out DateTimeOffset moment))
        {
            value = moment.ToUnixTimeMilliseconds();
            return true;
        }

        allowed = "a moment as 2026-01-20 or 2026-01-20T05:00Z";
        return long.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out value);
    }
}
