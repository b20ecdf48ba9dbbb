using PileController.Settings;
using PileController.Settings.Changes;
using PileController.Settings.Tables;

namespace PileController.Tests.Settings.Changes;

public class SettingsEditingTests
{
    private const string File = """
        {
          // The floor of an anxious grower.
          "control": { "floor": "46 °C", "house": { "minimum": "3 °C", }, },
          "interlocks": { "supplyMost": "60 °C" },
        }
        """;

    private static readonly Dictionary<string, string> Nothing = [];

    [Fact]
    public void Try_OneValue_ChangesItAndNothingElse()
    {
        EditOutcome outcome = Try(("control.house.minimum", "\"41 °F\""));

        Assert.Empty(outcome.Faults);
        Assert.Equal(5, outcome.Settings.Control.HouseMinimumC, 9);
        Assert.Equal(46, outcome.Settings.Control.HeapFloorC);
        SettingsDifference only = Assert.Single(outcome.Differences);
        Assert.Equal(("control.house.minimum", "\"3 °C\"", "\"5 °C\""), (only.Path, only.Was, only.Is));
        Assert.Equal("control.house.minimum", Assert.Single(outcome.Values).Key);
        Assert.Equal(outcome.Settings.Fingerprint(), SettingsFile.Parse(outcome.Text).Settings.Fingerprint());
    }

    [Fact]
    public void Try_WhatTheFileSaysAnyway_LeavesNothingOverIt()
    {
        EditOutcome outcome = Try(("control.floor", "\"114.8 °F\""));

        Assert.Empty(outcome.Faults);
        Assert.Empty(outcome.Differences);
        Assert.Empty(outcome.Values);
    }

    [Fact]
    public void Try_Reset_GoesBackToTheFile()
    {
        Dictionary<string, string> over = new() { ["control.floor"] = "\"50 °C\"" };

        EditOutcome outcome = SettingsEditing.Try(File, over, new SettingsEdit(Nothing, ["control.floor"]));

        Assert.Equal(46, outcome.Settings.Control.HeapFloorC);
        Assert.Empty(outcome.Values);
        Assert.Equal("\"50 °C\"", Assert.Single(outcome.Differences).Was);
    }

    [Theory]
    [InlineData("control.floor", "\"20 °C\"", "35 °C to 60 °C")]
    [InlineData("control.floor", "46", "unit")]
    [InlineData("control.floor", "{\"a\":1}", "°C")]
    [InlineData("control.flor", "\"46 °C\"", "control.floor")]
    [InlineData("control.house.night", "\"25 °C\"", "")]
    [InlineData("panel.address", "\"http://0.0.0.0\"", "in the file only")]
    [InlineData("rig.hardware.gpioChip", "\"x\"", "in the file only")]
    [InlineData("rig.probes", "[]", "in the file only")]
    [InlineData("site.latitude", "\"80°\"", "in the file only")]
    public void Try_Wrong_IsNamedWithWhatIsAllowed(string path, string json, string allowed)
    {
        EditOutcome outcome = Try((path, json));

        Assert.Contains(outcome.Faults, fault => fault.Allowed.Contains(allowed) && fault.Line is null);
    }

    [Theory]
    [InlineData("interlocks.supplyMost", "\"61 °C\"", true)]
    [InlineData("interlocks.supplyMost", "\"55 °C\"", false)]
    [InlineData("interlocks.noFlowTime", "\"600 s\"", true)]
    [InlineData("interlocks.noFlowGrace", "\"600 s\"", true)]
    [InlineData("interlocks.lineFrost", "\"1 °C\"", true)]
    [InlineData("interlocks.lineFrost", "\"6 °C\"", false)]
    public void Try_AnInterlock_CanBeTightenedAndNotLoosened(string path, string json, bool refused)
    {
        EditOutcome outcome = Try((path, json));

        Assert.Equal(refused, outcome.Faults.Any(fault => fault.Path == path));
    }

    [Fact]
    public void Loosened_ATightenedLimit_GoesBackAsFarAsTheFileOnly()
    {
        Dictionary<string, string> tight = new() { ["interlocks.supplyMost"] = "\"50 °C\"" };

        EditOutcome back = SettingsEditing.Try(File, tight, Edit(("interlocks.supplyMost", "\"60 °C\"")));
        EditOutcome beyond = SettingsEditing.Try(File, tight, Edit(("interlocks.supplyMost", "\"60.1 °C\"")));

        Assert.Empty(back.Faults);
        Assert.NotEmpty(beyond.Faults);
    }

    [Fact]
    public void IsSecret_WhatIsToldToNobody_IsASettingThatCanBeChangedInTheFileOnly()
    {
        string[] secrets = [.. SettingsLeaf.Of(PileSettings.AlderBank).Select(leaf => leaf.Path).Where(EditRules.IsSecret)];

        Assert.Equal(["alarms.webhook", "alarms.heartbeat.url"], secrets);
        Assert.All(secrets, path => Assert.NotNull(EditRules.WhyInTheFile(path)));
    }

    [Fact]
    public void MayGo_EveryInterlockLimit_IsBounded()
    {
        string[] free = [.. PileFields.Table.Rows("").Select(row => row.Path)
            .Where(path => path.StartsWith("interlocks.", StringComparison.Ordinal) && EditRules.MayGo(path) is null)];

        Assert.Empty(free);
    }

    [Fact]
    public void Leaves_EveryRowOfTheTable_IsThere()
    {
        HashSet<string> leaves = [.. SettingsLeaf.Of(PileSettings.AlderBank).Select(leaf => leaf.Path)];

        Assert.All(PileFields.Table.Rows("").Select(row => row.Path.Split("[]")[0]), path => Assert.Contains(path, leaves));
    }

    [Fact]
    public void Try_AnyJsonForAnyPath_NeverThrowsAndNeverMakesFaultySettings()
    {
        Random random = new(20);
        string[] values =
        [
            "null", "true", "[]", "{}", "-1", "1e400", "\"\"", "\"NaN °C\"", "\"46 °C\"", "\"5 s\"", "\"5 h\"", "0.5", "\"\\ud800\"",
            "[{\"channel\":\"house\"}]", "\"means\"", "\"<script>\"",
        ];
        string[] paths = [.. SettingsLeaf.Of(PileSettings.AlderBank).Select(leaf => leaf.Path), "", ".", "control", "control..floor", "a.b"];
        for (int trial = 0; trial < 2000; trial++)
        {
            Dictionary<string, string> set = [];
            for (int i = random.Next(1, 4); i > 0; i--)
            {
                set[paths[random.Next(paths.Length)]] = values[random.Next(values.Length)];
            }

            EditOutcome outcome = SettingsEditing.Try(File, Nothing, new SettingsEdit(set, []));

            if (outcome.Faults.Count == 0)
            {
                Assert.Empty(SettingsFile.Parse(outcome.Text).Faults);
            }
        }
    }

    private static EditOutcome Try(params (string Path, string Json)[] set) => SettingsEditing.Try(File, Nothing, Edit(set));

    private static SettingsEdit Edit(params (string Path, string Json)[] set) => new(set.ToDictionary(one => one.Path, one => one.Json), []);
}
