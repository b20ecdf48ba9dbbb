using System.Text.Json;
using PileController.Control.Decisions;
using PileController.Control.Modes;
using PileController.Panel;
using PileController.Panel.Assets;
using PileController.Panel.Now;
using PileController.Panel.Sight;
using PileController.Tests.Support;

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
    [InlineData(false, "−2.5", "−2.5\u00a0°C", "1 235\u00a0W", "0.5\u00a0K")]
    [InlineData(true, "27.5", "27.5\u00a0°F", "4 213\u00a0BTU/h", "0.9\u00a0°F")]
    public void Figures_InBothSystems_AreWrittenAsTheScriptsDo(bool american, string bare, string temperature, string power, string kelvin)
    {
        SightFigures figures = new(american, " ");

        Assert.Equal(bare, figures.BareTemperature(-2.5));
        Assert.Equal(temperature, figures.OfTemperature(-2.5));
        Assert.Equal(power, figures.OfPower(1234.6));
        Assert.Equal(kelvin, figures.OfKelvin(0.5));
        Assert.Equal("–", figures.OfPower(null));
    }

    [Theory]
    [InlineData(1, "Its clock runs as fast as yours.")]
    [InlineData(60, "One minute here is one hour there.")]
    [InlineData(0.5, "One minute here is 30\u00a0s there.")]
    [InlineData(90, "One minute here is 1\u00a0h 30\u00a0min there.")]
    [InlineData(1440, "One minute here is 1\u00a0d there.")]
    [InlineData(2000, "One minute here is 1\u00a0d 9\u00a0h there.")]
    public async Task Demo_AtAnySpeed_SaysHowItsClockRuns(double speed, string told)
    {
        await using PanelHost host = await PanelHost.StartAsync(speed: 1);
        NowBody now = JsonSerializer.Deserialize<NowBody>(await host.Client.GetStringAsync("/api/now"), JsonSerializerOptions.Web)!;

        IReadOnlyDictionary<string, string> texts = new SightText(Words).Frame(now with { Speed = speed }, new SightReader(false, PanelScheme.System, SightAccess.Open));

        Assert.Equal($"Demo: Alder Bank, an invented holding. {told}", texts["demo"]);
    }

    [Fact]
    public async Task Sentence_WithThousands_SetsThemApartAsFiguresDo()
    {
        await using PanelHost host = await PanelHost.StartAsync(speed: 1);
        NowBody now = JsonSerializer.Deserialize<NowBody>(await host.Client.GetStringAsync("/api/now"), JsonSerializerOptions.Web)!;
        now = now with { Why = "It wants 1 900 W, and 12 000 W later.", WhyAmerican = "It wants 6,480 BTU/h." };

        Assert.Equal("It wants 1\u202f900\u00a0W, and 12\u202f000\u00a0W later.", new SightText(Words).Moment(now, american: false)["why"]);
        Assert.Equal("It wants 6\u202f480\u00a0BTU/h.", new SightText(Words).Moment(now, american: true)["why"]);
    }
}
