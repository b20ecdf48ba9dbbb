using PileController.Settings.Changes;

namespace PileController.Tests.Settings.Changes;

public class SettingsDeskTests
{
    private const string File = """{ "control": { "floor": "46 °C" } }""";

    private string? _written;

    [Fact]
    public void Apply_SoundEdit_IsWrittenAtOnceAndInForceWhenRenewed()
    {
        SettingsDesk desk = Open();
        string before = desk.Effective.Fingerprint();

        EditOutcome? outcome = desk.Apply(Floor("48 °C"), before, 1_000, "Robin", "127.0.0.1");

        Assert.Empty(outcome!.Faults);
        Assert.True(desk.Asked);
        Assert.Equal(46, desk.Effective.Control.HeapFloorC);
        ChangeEntry entry = Assert.Single(ChangeBook.FromJson(_written!).Entries);
        Assert.Equal(new ChangeEntry(1_000, "Robin", "127.0.0.1", "control.floor", "\"46 °C\"", "\"48 °C\""), entry);

        desk.Renew();
        Assert.Equal(48, desk.Effective.Control.HeapFloorC);
        Assert.False(desk.Asked);
        desk.Confirm();
        Assert.Equal(48, Open().Effective.Control.HeapFloorC);
    }

    [Fact]
    public void Apply_FaultyEdit_WritesNothing()
    {
        SettingsDesk desk = Open();

        EditOutcome? outcome = desk.Apply(Floor("90 °C"), null, 0, "Robin", "here");

        Assert.NotEmpty(outcome!.Faults);
        Assert.Null(_written);
        Assert.False(desk.Asked);
    }

    [Fact]
    public void Apply_OnOtherSettingsThanSeen_IsRefused()
    {
        SettingsDesk desk = Open();

        Assert.Null(desk.Apply(Floor("48 °C"), "seen long ago", 0, "Robin", "here"));
        Assert.Null(_written);
    }

    [Fact]
    public void Apply_WhileAChangeWaits_IsRefused()
    {
        SettingsDesk desk = Open();
        desk.Apply(Floor("48 °C"), null, 0, "Robin", "here");

        Assert.Null(desk.Apply(Floor("49 °C"), null, 0, "Kim", "there"));
    }

    [Fact]
    public void Apply_CardThatCannotBeWritten_ChangesNothing()
    {
        SettingsDesk desk = new(File, null, (_, _) => throw new IOException("full"));

        Assert.Throws<IOException>(() => desk.Apply(Floor("48 °C"), null, 0, "Robin", "here"));
        Assert.False(desk.Asked);
        Assert.Empty(desk.Book.Values);
    }

    [Fact]
    public void TakeBack_AChangeTheServiceDidNotStartWith_PutsTheOldOneBackAndSaysWhy()
    {
        SettingsDesk desk = Open();
        desk.Apply(Floor("48 °C"), null, 0, "Robin", "here");
        Assert.False(desk.Tried);
        desk.Renew();
        Assert.True(desk.Tried);

        desk.TakeBack("no chip");

        Assert.False(desk.Tried);
        Assert.Equal(46, desk.Effective.Control.HeapFloorC);
        Assert.Contains("no chip", desk.Trouble);
        Assert.Equal(46, Open().Effective.Control.HeapFloorC);
    }

    [Fact]
    public void Open_AProgramThatEndedBeforeItRanWithAChange_TakesItBackAndSaysSo()
    {
        Open().Apply(Floor("48 °C"), null, 0, "Robin", "here");

        SettingsDesk next = Open();

        Assert.Equal(46, next.Effective.Control.HeapFloorC);
        Assert.Contains("taken back", next.Trouble);
        Assert.Single(next.Book.Entries);
        Assert.Null(Open().Trouble);
    }

    [Fact]
    public void Confirm_OnceTheServiceRan_NothingIsTakenBack()
    {
        SettingsDesk desk = Open();
        desk.Apply(Floor("48 °C"), null, 0, "Robin", "here");
        desk.Renew();
        desk.Confirm();

        Assert.False(desk.Tried);
        Assert.Equal(48, Open().Effective.Control.HeapFloorC);
        Assert.Null(Open().Trouble);
    }

    [Fact]
    public void TakeBack_CardThatCannotBeWritten_RunsOnTheOldOnesAllTheSame()
    {
        bool full = false;
        SettingsDesk desk = new(File, null, (_, _) => Throw(full));
        desk.Apply(Floor("48 °C"), null, 0, "Robin", "here");
        desk.Renew();
        full = true;

        desk.TakeBack("no chip");

        Assert.Equal(46, desk.Effective.Control.HeapFloorC);
    }

    [Theory]
    [InlineData("{")]
    [InlineData("null")]
    [InlineData("""{ "version": 9, "values": {} }""")]
    [InlineData("""{ "version": 1, "values": { "control.floor": "\"20 °C\"" } }""")]
    [InlineData("""{ "version": 1, "values": { "interlocks.supplyMost": "\"90 °C\"" } }""")]
    [InlineData("""{ "version": 1, "values": { "panel.address": "\"http://0.0.0.0\"" } }""")]
    public void Open_ChangesThatDoNotFit_RunsOnTheFileAndSaysSo(string changes)
    {
        SettingsDesk desk = new(File, changes, (_, _) => { });

        Assert.Equal(46, desk.Effective.Control.HeapFloorC);
        Assert.Contains("not in force", desk.Trouble);
    }

    [Theory]
    [InlineData("{")]
    [InlineData("""{ "version": 9, "values": { "control.floor": "\"48 °C\"" } }""")]
    [InlineData("""{ "version": 1, "values": { "control.floor": "\"20 °C\"" } }""")]
    public void Apply_OverChangesThatDoNotFit_KeepsThemAsideUnderANameThatIsTold(string changes)
    {
        Dictionary<string, string> files = [];
        SettingsDesk desk = new(File, changes, (name, text) => files[name] = text);
        string name = Assert.Single(System.Text.RegularExpressions.Regex.Matches(desk.Trouble!, @"changes-aside-[0-9a-f]{8}\.json").Select(match => match.Value));
        Assert.Empty(files);

        desk.Apply(Floor("48 °C"), null, 0, "Robin", "here");
        desk.Renew();
        desk.Confirm();

        Assert.Equal(48, desk.Effective.Control.HeapFloorC);
        Assert.Equal(changes, files[name]);
        Assert.Contains(name, desk.Trouble, StringComparison.Ordinal);
        Assert.Equal(2, files.Count);
    }

    [Fact]
    public void Apply_WhereWhatDoesNotFitCannotBeKeptAside_ChangesNothing()
    {
        List<string> tried = [];
        SettingsDesk desk = new(File, "{", (name, _) =>
        {
            tried.Add(name);
            throw new IOException("full");
        });

        Assert.Throws<IOException>(() => desk.Apply(Floor("48 °C"), null, 0, "Robin", "here"));
        Assert.False(desk.Asked);
        Assert.DoesNotContain(SettingsDesk.FileName, tried);
    }

    private static void Throw(bool full)
    {
        if (full)
        {
            throw new IOException("full");
        }
    }

    private static SettingsEdit Floor(string value) => new(new Dictionary<string, string> { ["control.floor"] = $"\"{value}\"" }, []);

    private SettingsDesk Open() => new(File, _written, (_, text) => _written = text);
}
