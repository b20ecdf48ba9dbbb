using System.CommandLine;
using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using System.Text.Json;
using PileController.Access;
using PileController.Commands.Running;
using PileController.Commands.Shell;
using PileController.Control;
using PileController.Ledgers;
using PileController.Ledgers.Counting;
using PileController.Ledgers.Editing;
using PileController.Ledgers.Pages;
using PileController.Records;
using PileController.Records.Accounts;
using PileController.Records.Checking;
using PileController.Serving;
using PileController.Settings;

namespace PileController.Commands.Ledgers;

/// <summary>What the commands of the book have in common.</summary>
internal static class LedgerAsk
{
    /// <summary>The season meant.</summary>
    public static Option<string?> Season() => new("--season") { Description = "Name of the season; the last one when left out." };

    /// <summary>The holding.</summary>
    public static Option<string?> Settings() => new("--settings") { Description = "The settings file; those kept beside the record when left out." };

    /// <summary>The person.</summary>
    public static Option<string> Who() => Text("--who", "Who writes it.", LedgerLimits.LongestWho).Needed();

    /// <summary>A text.</summary>
    public static Option<string> Text(string name, string description, int longest) =>
        Ask.Of(name, $"{description} 1 to {longest} characters.", (string text, out string value, [NotNullWhen(false)] out string? allowed) =>
        {
            value = text.Trim();
            allowed = TypedText.Allows(value, longest) ? null : $"1 to {longest} characters of text";
            return allowed is null;
        });

    /// <summary>A text without a name before it.</summary>
    public static Argument<string> Text(string name, string description, int longest, string what)
    {
        Argument<string> argument = new(name) { Description = $"{description} 1 to {longest} characters." };
        argument.Validators.Add(result =>
        {
            if (!TypedText.Allows(result.Tokens[^1].Value.Trim(), longest))
            {
                result.AddError($"{what} is \"{result.Tokens[^1].Value}\"; allowed: 1 to {longest} characters of text");
            }
        });
        return argument;
    }

    /// <summary>A date.</summary>
    public static Option<DateOnly?> Date(string name, string description) =>
        Ask.Of(name, description, (string text, out DateOnly? value, [NotNullWhen(false)] out string? allowed) =>
        {
            bool good = DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out DateOnly date);
            value = good ? date : null;
            allowed = good ? null : "a date as 2026-01-20";
            return good;
        });

    /// <summary>Looks into the book, whether or not a service writes in the folder; writes nothing.</summary>
    public static Task<int> LookAsync(ParseResult parse, Option<string> data, Option<string?> settings, Func<LedgerView, int> then) =>
        InFolderAsync(parse, data, settings, begin: false, async (folder, given) =>
        {
            // The book first: what a service keeps in it meanwhile is in the record too.
            Book book = new BookFile(folder).Read();
            List<string> problems = [];
            int code = then(await CountAsync(folder, book, new BookCounting(new DataFolder(folder).FindSettings, given), problems));
            foreach (string problem in problems)
            {
                parse.InvocationConfiguration.Error.WriteLine(problem);
            }

            return code;
        });

    /// <summary>Makes a change and says what was done.</summary>
    /// <param name="parse">The command line.</param>
    /// <param name="options">The options that every change has.</param>
    /// <param name="begin">Whether a folder may be begun.</param>
    /// <param name="change">Gives the new book from the one that stands, what control remembers, the hand and today's date.</param>
    /// <param name="said">Says what was done, from the book as it stands now.</param>
    /// <param name="cancellation">Gives it up.</param>
    public static Task<int> EditAsync(
        ParseResult parse, EditOptions options, bool begin, Func<LedgerView, Memory?, Hand, DateOnly, Book> change,
        Func<LedgerView, string> said, CancellationToken cancellation) =>
        InFolderAsync(parse, options.Data, options.Settings, begin, async (folder, given) =>
        {
            // While a record is open here no other process writes in its folder.
            await using LiteRecord record = LiteRecord.Open(new RecordOptions { DataDirectory = folder });
            using LedgerDesk desk = new(folder, record, new DataFolder(folder).FindSettings, given);
            Hand by = new(parse.GetRequiredValue(options.Who), "command line", TimeProvider.System.GetUtcNow().ToUnixTimeMilliseconds());
            LedgerView view = await desk.EditAsync(
                (v, memory) => change(v, memory, by, LedgerRules.Of(v.Settings).DateOf(by.AtUtcMilliseconds)), cancellation);
            if (parse.GetValue(options.Json))
            {
                WriteJson(parse, LedgerPage.Of(view, EntryEdits.Find(view.Book, null)));
            }
            else
            {
                parse.InvocationConfiguration.Output.WriteLine(said(view));
            }

            return ExitCodes.Done;
        });

    /// <summary>One line of JSON.</summary>
    public static void WriteJson<T>(ParseResult parse, T answer) =>
        parse.InvocationConfiguration.Output.WriteLine(JsonSerializer.Serialize(answer, LedgerJson.Options));

    private static async Task<LedgerView> CountAsync(string folder, Book book, BookCounting counting, List<string> problems)
    {
        if (!LiteRecord.Exists(folder))
        {
            return await counting.CountAsync(book, 0, (_, _, _) => Task.FromResult<IReadOnlyList<BlockAccount>>([]));
        }

        using RecordReader reader = RecordReader.Open(folder);
        problems.AddRange(reader.Problems);
        return await counting.CountAsync(
            book, reader.LastSequence, (after, most, rulesOf) => Task.FromResult(reader.Accounts(after, most, rulesOf, problems.Add)));
    }

    private static async Task<int> InFolderAsync(
        ParseResult parse, Option<string> data, Option<string?> settings, bool begin, Func<string, PileSettings?, Task<int>> then)
    {
        PileSettings? given = null;
        if (parse.GetValue(settings) is not null && (given = SettingsSource.Sound(parse, settings)) is null)
        {
            return ExitCodes.WrongUse;
        }

        string folder = parse.GetRequiredValue(data);
        if (!begin && !LiteRecord.Exists(folder) && !File.Exists(Path.Combine(folder, BookFile.Name)))
        {
            string why = Directory.Exists(folder) ? "it holds neither record nor book" : "there is no such folder";
            return RecordAsk.Refuse(parse, folder, $"{why}; allowed: the folder of a record");
        }

        try
        {
            return await then(folder, given);
        }
        catch (LedgerRefusedException refused)
        {
            parse.InvocationConfiguration.Error.WriteLine(refused.Message);
            return ExitCodes.No;
        }
        catch (Exception failed) when (failed is RecordInUseException or IOException)
        {
            return RecordAsk.Refuse(parse, folder, failed.Message);
        }
    }
}

/// <summary>The options that every change of the book has.</summary>
internal sealed record EditOptions(Option<string> Data, Option<string?> Settings, Option<string> Who, Option<bool> Json)
{
    /// <summary>Fresh ones.</summary>
    public static EditOptions Create() => new(RecordAsk.Data(), LedgerAsk.Settings(), LedgerAsk.Who(), Ask.Json());

    /// <summary>Adds them to a command.</summary>
    public void AddTo(Command command)
    {
        command.Options.Add(Data);
        command.Options.Add(Who);
        command.Options.Add(Settings);
        command.Options.Add(Json);
    }
}
