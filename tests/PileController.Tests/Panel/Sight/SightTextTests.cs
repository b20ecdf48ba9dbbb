using PileController.Control.Decisions;
using PileController.Control.Modes;
using PileController.Panel;
using PileController.Panel.Assets;
using PileController.Panel.Now;
using PileController.Panel.Sight;

namespace PileController.Tests.Panel.Sight;

public class SightTextTests
{
    private static readonly PageWords Words = new(PanelAssets.TextOf);

    [Fact]
    public void EveryName_OnTheWire_HasItsWord()
    {
        Assert.All(Enum.GetValues<HouseState>(), state => Assert.NotEmpty(Words.Say("judge", "HOUSE." + WireNames.Of(state))));
        Assert.All(Enum.GetValues<HeapState>(), state => Assert.NotEmpty(Words.Say("judge", "HEAP." + WireNames.Of(state))));
        Assert.All(Enum.GetValues<Mode>(), mode => Assert.NotEmpty(Words.Say("names", "MODES." + WireNames.Of(mode))));
        Assert.All(Enum.GetValues<Curb>(), curb => Assert.NotEmpty(Words.Say("names", "CURBS." + WireNames.Of(curb))));
        Assert.All(Enumerable.Range(0, 7), day => Assert.NotEmpty(Words.Say("calendar", $"DAYS.{day}")));
        Assert.All(Enumerable.Range(0, 12), month => Assert.NotEmpty(Words.Say("calendar", $"MONTHS.{month}")));
        Assert.NotEmpty(Words.Say("names", "lockedOff"));
    }

    [Theory]
    [InlineData(false, "−2.5", "−2.5\u00a0°C", "1,235\u00a0W", "0.5\u00a0K")]
    [InlineData(true, "27.5", "27.5\u00a0°F", "4,213\u00a0BTU/h", "0.9\u00a0°F")]
    public void Figures_InBothSystems_AreWrittenAsTheScriptsDo(bool american, string bare, string temperature, string power, string kelvin)
    {
        SightFigures figures = new(american);

        Assert.Equal(bare, figures.BareTemperature(-2.5));
        Assert.Equal(temperature, figures.OfTemperature(-2.5));
        Assert.Equal(power, figures.OfPower(1234.6));
        Assert.Equal(kelvin, figures.OfKelvin(0.5));
        Assert.Equal("–", figures.OfPower(null));
    }
}
