using System.CommandLine;
using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using PileController.Commands.Shell;
using PileController.Records;

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
    public static void CheckSpanAndForm(Command command, Option<long> from, Option<long> to, Option<bool> json, Option<bool> csv) =>
        command.Validators.Add(result =>
        {
            bool bothGiven = result.GetResult(from) is { Implicit: false } && result.GetResult(to) is { Implicit: false };
            if (bothGiven && result.GetValue(from) >= result.GetValue(to))
            {
                result.AddError($"{from.Name} must be before {to.Name}");
            }

            if (result.GetValue(json) && result.GetValue(csv))
            {
                result.AddError($"{json.Name} and {csv.Name} are two forms of answer; allowed: one of them");
            }
        });

    /// <summary>Opens a record that no process has open and does something with it; says why when it cannot.</summary>
    public static async Task<int> WithAsync(ParseResult parse, Option<string> data, Func<LiteRecord, Task<int>> then)
    {
        string folder = parse.GetValue(data)!;
        if (!LiteRecord.Exists(folder))
        {
            string why = Directory.Exists(folder) ? "it holds no record" : "there is no such folder";
            return Refuse(parse, folder, $"{why}; allowed: the folder of a record");
        }

        try
        {
            await using LiteRecord record = LiteRecord.Open(new RecordOptions { DataDirectory = folder });
            return await then(record);
        }
        catch (RecordInUseException used)
        {
            return Refuse(parse, folder, used.Message);
        }
        catch (IOException failed)
        {
            return Refuse(parse, folder, failed.Message);
        }
    }

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
