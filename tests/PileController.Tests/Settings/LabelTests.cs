using PileController.Control.Readings;
using PileController.Panel.Now;
using PileController.Settings;

namespace PileController.Tests.Settings;

/// <summary>What a spare thermometer may be called.</summary>
public class LabelTests
{
    [Theory]
    [InlineData("Bed")]
    [InlineData("Frühbeet 2 (Nord), 3.5 m")]
    [InlineData("12345678901234567890123456789012")]
    public void Label_OfASpareThermometer_IsReadAndShown(string label)
    {
        SettingsResult read = Parse($$"""{ "channel": "spareOne", "label": "{{label}}" }""");

        Assert.Empty(read.Faults);
        Assert.Equal(label, ProbeWords.Label(read.Settings.Rig.Probes, Channel.SpareOne));
        Assert.Equal("Spare thermometer 2", ProbeWords.Label(read.Settings.Rig.Probes, Channel.SpareTwo));
        Assert.Equal(read.Settings.Rig.Probes, SettingsFile.Parse(read.Settings.CanonicalJson()).Settings.Rig.Probes);
    }

    // Nothing that means something to a page, a table, a message or a terminal.
    [Theory]
    [InlineData("")]
    [InlineData(" Bed")]
    [InlineData("<b>Bed</b>")]
    [InlineData("=1+1")]
    [InlineData("@bed")]
    [InlineData("-bed")]
    [InlineData("a&b")]
    [InlineData("a\\nb")]
    [InlineData("a\\u001b[31m")]
    [InlineData("a\\u202eb")]
    [InlineData("a'b")]
    [InlineData("a\\\"b")]
    [InlineData("123456789012345678901234567890123")]
    public void Label_ThatCouldMeanSomething_IsRefused(string json)
    {
        SettingsFault fault = Assert.Single(Parse($$"""{ "channel": "spareOne", "label": "{{json}}" }""").Faults);

        Assert.Equal("rig.probes[0].label", fault.Path);
        Assert.Contains("at most 31 more letters", fault.Allowed, StringComparison.Ordinal);
    }

    [Fact]
    public void Label_OfAnotherProbe_IsRefused()
    {
        SettingsFault fault = Assert.Single(Parse("""{ "channel": "house", "label": "Bed" }""").Faults);

        Assert.Equal(("rig.probes[0].label", "\"Bed\""), (fault.Path, fault.Given));
        Assert.Contains("spareOne to spareFour only", fault.Allowed, StringComparison.Ordinal);
    }

    [Fact]
    public void Label_GivenTwice_IsRefused()
    {
        SettingsFault fault = Assert.Single(
            Parse("""{ "channel": "spareOne", "label": "Bed" }, { "channel": "spareTwo", "label": "Bed" }""").Faults);

        Assert.Equal("rig.probes[1].label", fault.Path);
    }

    private static SettingsResult Parse(string probes) => SettingsFile.Parse($$"""{ "rig": { "probes": [ {{probes}} ] } }""");
}
