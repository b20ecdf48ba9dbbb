using PileController.Commissioning;
using PileController.Commissioning.Sheets;
using PileController.Ledgers;
using PileController.Settings;

namespace PileController.Tests.Commissioning.Sheets;

public sealed class SheetFileTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("pile-sheet-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    private static SheetEntry Entry(string test, string subject, Soundness verdict, long at = 1_790_000_000_000, string who = "Robin") => new(
        test, $"Test {test}", new Hand(who, "command line", at), Simulated: false,
        [new Outcome(subject, verdict, "A sentence.") { Figure = 1.5, Unit = "K", Uncertainty = 0.1, Adopt = [new SettingsLine("rig.pulsesPerLitre", "\"452.0 1/L\"", true)], File = "{}" }]);

    [Fact]
    public void Add_ToNothing_IsReadBackWhole()
    {
        SheetFile file = new(Path.Combine(_folder, "deeper"));

        Assert.Empty(file.Read().Entries);
        file.Add(Entry("ice", "supply", Soundness.Doubtful));
        file.Add(Entry("exercise", "pump", Soundness.Sound));

        Sheet read = new SheetFile(Path.Combine(_folder, "deeper")).Read();
        Assert.Equal(["ice", "exercise"], read.Entries.Select(entry => entry.Test));
        Assert.Equivalent(Entry("ice", "supply", Soundness.Doubtful), read.Entries[0], strict: true);
    }

    [Theory]
    [InlineData("{", "in line 1")]
    [InlineData("""{"schema":2,"entries":[]}""", "schema is 2; allowed: 1")]
    [InlineData("""{"schema":1,"entries":[],"more":0}""", "a field this program does not know")]
    [InlineData("""{"schema":1,"entries":[null]}""", "an entry is null")]
    public void Read_SpoiltFile_SaysSoAndIsNeverWrittenOver(string text, string words)
    {
        SheetFile file = new(_folder);
        File.WriteAllText(file.FullPath, text);

        Assert.Contains(words, Assert.Throws<SheetFileException>(file.Read).Message);
        Assert.Throws<SheetFileException>(() => file.Add(Entry("ice", "supply", Soundness.Sound)));
        Assert.Equal(text, File.ReadAllText(file.FullPath));
    }

    [Fact]
    public void Latest_OfAThing_IsTheNewestOfTheTestsThatCount()
    {
        Sheet sheet = Sheet.Empty.With(Entry("ice", "return", Soundness.Sound, 1)).With(Entry("pair", "return", Soundness.Doubtful, 2)).With(Entry("find", "return", Soundness.Failed, 3));

        Assert.Equal(2, sheet.Latest("return", "ice", "pair")!.Value.Entry.By.AtUtcMilliseconds);
        Assert.Null(sheet.Latest("supply", "ice"));
    }

    [Fact]
    public void With_MoreThanItHolds_LosesTheOldest()
    {
        Sheet sheet = Sheet.Empty;
        for (int i = 0; i <= Sheet.MostEntries; i++)
        {
            sheet = sheet.With(Entry("ice", "supply", Soundness.Sound, i));
        }

        Assert.Equal(Sheet.MostEntries, sheet.Entries.Count);
        Assert.Equal(1, sheet.Entries[0].By.AtUtcMilliseconds);
    }

    [Fact]
    public void Page_NamesAPersonTyped_StandAsText()
    {
        string page = SheetPage.Html(Sheet.Empty.With(Entry("ice", "supply", Soundness.Sound, who: "<script>alert(1)</script>")), PileSettings.AlderBank, embedStyle: true);

        Assert.DoesNotContain("<script>", page);
        Assert.Contains("&lt;script&gt;", page);
        Assert.Contains("rig.pulsesPerLitre", page);
        Assert.Contains("Signed", page);
    }
}
