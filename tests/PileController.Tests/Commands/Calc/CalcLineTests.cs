using System.Text.Json;

namespace PileController.Tests.Commands.Calc;

public class CalcLineTests
{
    private static readonly string[] Plain =
    [
        "calc", "line", "--tube", "PEX 1/2 in", "--length", "10 m", "--insulation", "20 mm", "--flow", "4 L/min", "--water", "10 °C",
        "--outside", "-10 °C", "--surface", "20 W/m2K",
    ];

    [Fact]
    public async Task Line_ForMachines_HasTheAgreedKeysFirst()
    {
        using JsonDocument answer = await AnswerAsync([.. Plain, "--json"]);
        Assert.Equal("lossWatts,outletC,minutesToFreezeStill", string.Join(',', answer.RootElement.EnumerateObject().Take(3).Select(p => p.Name)));
    }

    [Fact]
    public async Task Line_InHardFrost_LosesAndFreezesAsByHand()
    {
        // Layers 0.1065 + 5.718 + film 0.2848 = 6.110 m·K/W: 20 K over 10 m is 32.7 W at the inlet's temperature all along;
        // still water holds 660.8 J/(m·K) with the wall: 660.8 · 6.110 · ln(20/10) = 2799 s.
        using JsonDocument answer = await AnswerAsync([.. Plain, "--json"]);
        Assert.Equal(32.7, answer.RootElement.GetProperty("lossWatts").GetDouble(), 0.1);
        Assert.Equal(46.6, answer.RootElement.GetProperty("minutesToFreezeStill").GetDouble(), 0.2);
        Assert.True(answer.RootElement.GetProperty("minutesToFreezeStillAtOutlet").GetDouble() < answer.RootElement.GetProperty("minutesToFreezeStill").GetDouble());
    }

    [Fact]
    public async Task Line_Buried_IsLimitedByTheGroundsShapeFactor()
    {
        // Bare copper leaves the ground alone: arcosh(2 · 0.6 / 0.02223) / (2π · 1) = 0.7468·… = 4.682/6.283 = 0.7451 m·K/W.
        // The shape factor is that of HTX-024 (ht library test values).
        using JsonDocument answer = await AnswerAsync(
            "calc", "line", "--tube", "copper 3/4 in", "--length", "1 m", "--insulation", "0 m", "--flow", "100 L/min", "--water", "40 °C",
            "--outside", "0 °C", "--buried", "0.6 m", "--soil-conductivity", "1 W/mK", "--json");
        Assert.Equal(1 / 0.7451, answer.RootElement.GetProperty("lossWPerMK").GetDouble(), 2e-3);
    }

    [Fact]
    public async Task Line_InWind_HasTheFilmOfThatWind()
    {
        // 5.7 + 3.8 · 5 = 24.7 W/(m²·K), from memory.
        using JsonDocument wind = await AnswerAsync([.. Plain[..14], "--wind", "5 m/s", "--json"]);
        using JsonDocument film = await AnswerAsync([.. Plain[..14], "--surface", "24.7 W/m2K", "--json"]);
        Assert.Equal(film.RootElement.GetRawText(), wind.RootElement.GetRawText());
    }

    [Fact]
    public async Task Line_WithoutFrost_NeverFreezes()
    {
        string[] args = [.. Plain[..13], "1 °C"];
        using JsonDocument answer = await AnswerAsync([.. args, "--json"]);
        Assert.Equal(JsonValueKind.Null, answer.RootElement.GetProperty("minutesToFreezeStill").ValueKind);
        Assert.Contains("never", (await CommandLine.RunAsync(args)).Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Line_SoLongThatItFreezesRunning_SaysSo()
    {
        string[] args = ["calc", "line", "--tube", "PEX 3/8 in", "--length", "200 m", "--insulation", "0 m", "--flow", "0.2 L/min", "--water", "5 °C", "--outside", "-20 °C"];
        Assert.Contains("ice: at this flow the water freezes before the end", (await CommandLine.RunAsync(args)).Output, StringComparison.Ordinal);
        using JsonDocument answer = await AnswerAsync([.. args, "--json"]);
        Assert.True(answer.RootElement.GetProperty("freezesRunning").GetBoolean());
        Assert.Equal(0, answer.RootElement.GetProperty("minutesToFreezeStillAtOutlet").GetDouble());
    }

    [Fact]
    public async Task Line_ForPeople_ShowsBothSystemsAndTheCaution()
    {
        CommandLine run = await CommandLine.RunAsync(Plain);
        Assert.Equal(0, run.ExitCode);
        Assert.Matches(@"loss +33 W \(11\d BTU/h\)", run.Output);
        Assert.Matches(@"still water freezes +after 46\.\d min at the inlet", run.Output);
        Assert.Contains("frost bursts lines", run.Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--length", "-1 m", "--length is \"-1 m\"; allowed: 0.01 m to 5000 m")]
    [InlineData("--insulation", "-1 in", "--insulation is \"-1 in\"; allowed: 0 m to 0.5 m")]
    [InlineData("--water", "100 °C", "--water is \"100 °C\"; allowed: 0 °C to 95 °C")]
    [InlineData("--outside", "-70 °C", "--outside is \"-70 °C\"; allowed: -60 °C to 95 °C")]
    [InlineData("--flow", "0 L/min", "--flow is \"0 L/min\"; allowed: 0.001 L/min")]
    [InlineData("--wind", "5 m/s", "--wind is given beside --surface; allowed: one of them")]
    [InlineData("--wind", "-5 m/s", "--wind is \"-5 m/s\"; allowed: 0 m/s to 60 m/s")]
    [InlineData("--buried", "2 cm", "--buried is 0.02 m (0.1 ft), within the line itself; allowed: more than 0.03 m")]
    public async Task Line_ThatCannotBe_IsWrongUse(string option, string given, string words)
    {
        CommandLine run = await CommandLine.RunAsync(CommandLine.With(Plain, option, given));
        Assert.Equal(2, run.ExitCode);
        Assert.Equal("", run.Output);
        Assert.Contains(words, run.Error, StringComparison.Ordinal);
    }

    private static async Task<JsonDocument> AnswerAsync(params string[] args)
    {
        CommandLine run = await CommandLine.RunAsync(args);
        Assert.Equal("", run.Error);
        Assert.Equal(0, run.ExitCode);
        return JsonDocument.Parse(run.Output);
    }
}
