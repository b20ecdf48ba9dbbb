using System.Globalization;
using System.Text.Json;
using PileController.Ledgers;
using PileController.Records;
using PileController.Tests.Ledgers;

namespace PileController.Tests.Commands;

public sealed class LedgerTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("pile-ledger-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public async Task Season_ByCommands_FromItsHeapToItsReport()
    {
        await RecordAsync();
        await DoneAsync("open", "--name", "First", "--heap-built", "2026-03-01", "--who", "Jo", "--fuel", "cordwood", "--price", "300", "--money", "€");
        await DoneAsync("note", "--who", "Jo", "Added water");
        await DoneAsync("mass", "--way", "in", "--mass", "9 t", "--known", "guessed", "--how", "12 trailers", "--who", "Jo");
        await DoneAsync("part", "--who", "Jo", "--price", "45", "--count", "2", "--reused", "steel drum");
        await DoneAsync("amend", "--who", "Ann", "--electricity", "0");
        await DoneAsync("close", "--who", "Jo", "--on", "2026-03-20");
        string file = Path.Combine(_folder, "first.html");
        await DoneAsync("report", file);

        SeasonEntry season = new BookFile(_folder).Read().Seasons.Single();
        Assert.Equal(("cordwood", 300.0, 0.0, "€"), (season.Fuel.Name, season.Fuel.PricePerUnit, season.Fuel.ElectricityPerKWh, season.Fuel.Money));
        Assert.Equal(("Jo", "command line"), (season.Notes[0].By.Who, season.Notes[0].By.From));
        Assert.Equal(9000, season.Mass(MassWay.In)!.Kilograms);
        Assert.True(season.Parts[0].Reused);
        Assert.Equal(new DateOnly(2026, 3, 20), season.Closed!.On);
        Assert.Contains("First: a season at", File.ReadAllText(file), StringComparison.Ordinal);
        string shown = (await DoneAsync("show")).Output;
        Assert.Contains("Heat by water", shown, StringComparison.Ordinal);
        Assert.Contains("An estimate", shown, StringComparison.Ordinal);
        Assert.Contains("Lessons", shown, StringComparison.Ordinal);
        Assert.Contains("2026-03-20", (await DoneAsync("compare")).Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Show_InJson_TellsDaysThatSumToTheSeasonAndWritesNothing()
    {
        await RecordAsync();
        CommandLine run = await DoneAsync("show", "--by", "days", "--json");

        using JsonDocument page = JsonDocument.Parse(run.Output);
        double days = page.RootElement.GetProperty("days").EnumerateArray().Sum(d => d.GetProperty("waterKWh").GetDouble());
        Assert.Equal(page.RootElement.GetProperty("total").GetProperty("waterKWh").GetDouble(), days, 9);
        Assert.Equal(3, page.RootElement.GetProperty("days").GetArrayLength());
        Assert.False(File.Exists(Path.Combine(_folder, BookFile.Name)));
    }

    [Fact]
    public async Task Show_ByDays_SaysFromWhenToWhenEachWasCounted()
    {
        await RecordAsync();

        string[] lines = (await DoneAsync("show", "--by", "days")).Output.TrimEnd().Split('\n');

        Assert.Equal(3, lines.Length);
        Assert.All(lines, line => Assert.Matches(@"^2026-03-0\d  water .* ± .*; counted from 2026-03-0\d .* to 2026-03-\d\d ", line));
    }

    [Fact]
    public async Task Show_WhileTheControllerRuns_TellsTheSameAndChangesNothing()
    {
        await RecordAsync();
        string still = (await DoneAsync("show", "--by", "days")).Output;
        await using LiteRecord running = LiteRecord.Open(new RecordOptions { DataDirectory = _folder });

        string shown = (await DoneAsync("show", "--by", "days")).Output;

        Assert.Equal(still, shown);
        Assert.True(running.Health.Accepting);
    }

    [Fact]
    public async Task Change_WhileTheControllerRuns_IsRefused()
    {
        await using LiteRecord running = LiteRecord.Open(new RecordOptions { DataDirectory = _folder });

        CommandLine run = await CommandLine.RunAsync("ledger", "note", "--data", _folder, "--who", "Jo", "x");

        Assert.Equal(2, run.ExitCode);
        Assert.Contains("in use", run.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(1, "open one first", "note", "--who", "Jo", "x")]
    [InlineData(1, "No season is open", "close", "--who", "Jo")]
    [InlineData(2, "--who is missing", "note", "x")]
    [InlineData(2, "TEXT is \" \"; allowed: 1 to 2000 characters", "note", "--who", "Jo", " ")]
    [InlineData(2, "--way is \"up\"; allowed: one of \"in\", \"out\"", "mass", "--way", "up", "--mass", "1 kg", "--known", "measured", "--who", "Jo")]
    [InlineData(2, "--mass is \"9\"; allowed", "mass", "--way", "in", "--mass", "9", "--known", "measured", "--who", "Jo")]
    [InlineData(2, "--on is \"today\"; allowed: a date as 2026-01-20", "close", "--on", "today", "--who", "Jo")]
    [InlineData(2, "--by is \"weeks\"; allowed", "show", "--by", "weeks")]
    public async Task Command_UsedWrongly_SaysWhatIsAllowed(int code, string says, params string[] words)
    {
        await RecordAsync();

        CommandLine run = await CommandLine.RunAsync(["ledger", words[0], "--data", _folder, .. words[1..]]);

        Assert.Equal(code, run.ExitCode);
        Assert.Contains(says, run.Error, StringComparison.Ordinal);
        Assert.Equal("", run.Output);
    }

    [Fact]
    public async Task Folder_WithNothingInIt_IsRefusedAndStaysEmpty()
    {
        CommandLine run = await CommandLine.RunAsync("ledger", "show", "--data", _folder);

        Assert.Equal(2, run.ExitCode);
        Assert.Contains("holds neither record nor book", run.Error, StringComparison.Ordinal);
        Assert.Empty(Directory.EnumerateFileSystemEntries(_folder));
    }

    [Fact]
    public async Task Book_ThatCannotBeRead_IsToldAndLeft()
    {
        string book = Path.Combine(_folder, BookFile.Name);
        File.WriteAllText(book, "{ \"schema\": 7 }");

        CommandLine run = await CommandLine.RunAsync("ledger", "open", "--data", _folder, "--name", "x", "--who", "Jo");

        Assert.Equal(2, run.ExitCode);
        Assert.Contains("schema is 7; allowed: 1", run.Error, StringComparison.Ordinal);
        Assert.Equal("{ \"schema\": 7 }", File.ReadAllText(book));
    }

    [Fact]
    public async Task Plan_WithLessons_OffersThemAndAppliesNothing()
    {
        new BookFile(_folder).Write(SampleBook.Two());
        string[] plan = ["plan", "--seasons", "1", "--days", "5", "--json"];

        using JsonDocument without = JsonDocument.Parse((await CommandLine.RunAsync(plan)).Output);
        using JsonDocument with = JsonDocument.Parse((await CommandLine.RunAsync([.. plan, "--lessons", _folder])).Output);
        CommandLine words = await CommandLine.RunAsync([.. plan[..^1], "--lessons", _folder]);
        CommandLine none = await CommandLine.RunAsync([.. plan, "--lessons", Path.Combine(_folder, "none")]);

        Assert.Equal(JsonValueKind.Null, without.RootElement.GetProperty("lessons").ValueKind);
        Assert.Equal(0.9, with.RootElement.GetProperty("lessons").GetProperty("coil").GetProperty("factor").GetDouble());
        Assert.Equal(without.RootElement.GetProperty("ahead").GetRawText(), with.RootElement.GetProperty("ahead").GetRawText());
        Assert.Contains("not applied", words.Output, StringComparison.Ordinal);
        Assert.Equal(2, none.ExitCode);
        Assert.Contains("--lessons is", none.Error, StringComparison.Ordinal);
    }

    private async Task<CommandLine> DoneAsync(string command, params string[] words)
    {
        CommandLine run = await CommandLine.RunAsync(["ledger", command, "--data", _folder, .. words]);
        Assert.True(run.ExitCode == 0 && run.Error.Length == 0, run.Error);
        return run;
    }

    private async Task RecordAsync()
    {
        await using LiteRecord record = LiteRecord.Open(new RecordOptions { DataDirectory = _folder, BlockTicks = 60 });
        new BookTicks().Live(record, DateTimeOffset.Parse("2026-03-05T12:00:00Z", CultureInfo.InvariantCulture), 48 * 60);
    }
}
