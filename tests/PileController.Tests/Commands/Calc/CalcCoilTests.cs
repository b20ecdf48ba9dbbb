using System.Text.Json;

namespace PileController.Tests.Commands.Calc;

public class CalcCoilTests
{
    private static readonly string[] Plain =
        ["calc", "coil", "--tube", "PEX 1/2 in", "--length", "100 m", "--flow", "1 gal/min", "--inlet", "40 °C", "--heap", "60 °C"];

    [Fact]
    public async Task Coil_ForMachines_HasTheAgreedKeysFirst()
    {
        using JsonDocument answer = await AnswerAsync([.. Plain, "--json"]);
        Assert.Equal("outletC,drawWatts,effectiveness,ntu", string.Join(',', answer.RootElement.EnumerateObject().Take(4).Select(p => p.Name)));
    }

    [Theory]

    // HTX-028, 030, 032: bed conductance of half-inch PEX after an hour, a day, a month, by the line source, W/(m·K).
    [InlineData("1 h", 1.6485)]
    [InlineData("1 d", 0.8106)]
    [InlineData("30 d", 0.5235)]
    public async Task Coil_AfterATime_IsLimitedByTheBedAsTheLineSourceSays(string after, double bedWPerMK)
    {
        using JsonDocument answer = await AnswerAsync([.. Plain, "--after", after, "--json"]);
        Assert.Equal(1 / bedWPerMK, answer.RootElement.GetProperty("bedMKPerW").GetDouble(), 0.01 / bedWPerMK);
    }

    [Fact]
    public async Task Coil_WithoutATime_IsThatAfterAMonth()
    {
        using JsonDocument plain = await AnswerAsync([.. Plain, "--json"]);
        using JsonDocument month = await AnswerAsync([.. Plain, "--after", "30 d", "--json"]);
        Assert.Equal(month.RootElement.GetRawText(), plain.RootElement.GetRawText());
        Assert.Equal(30, plain.RootElement.GetProperty("afterDays").GetDouble());
    }

    [Fact]
    public async Task Coil_OverTheMonths_Fades()
    {
        using JsonDocument answer = await AnswerAsync([.. Plain, "--json"]);
        double[] watts = [.. answer.RootElement.GetProperty("fading").EnumerateArray().Select(m => m.GetProperty("drawWatts").GetDouble())];
        Assert.Equal(5, watts.Length);
        Assert.Equal(watts.OrderDescending(), watts);
        Assert.True(watts[3] < 0.5 * watts[0], "a month of draw leaves less than half of the first hour");
    }

    // Before r²/4at has fallen to 0.1 the line source stands for no pipe: 16.4 min in moist chips here, 5.5 h in a bed of 0.02 W/mK.
    [Theory]
    [InlineData("0.4 W/mK", 5, 1.0 / 24)]
    [InlineData("0.02 W/mK", 4, 1)]
    public async Task Coil_Fading_BeginsWhereTheLineSourceStands(string bed, int moments, double firstDays)
    {
        using JsonDocument answer = await AnswerAsync([.. Plain, "--bed-conductivity", bed, "--json"]);
        double[] days = [.. answer.RootElement.GetProperty("fading").EnumerateArray().Select(m => m.GetProperty("afterDays").GetDouble())];
        Assert.Equal(moments, days.Length);
        Assert.Equal(firstDays, days[0], 1e-12);
    }

    [Fact]
    public async Task Coil_InADryBed_DrawsLess()
    {
        using JsonDocument moist = await AnswerAsync([.. Plain, "--json"]);
        using JsonDocument dry = await AnswerAsync([.. Plain, "--bed-conductivity", "0.1 W/mK", "--json"]);
        Assert.True(dry.RootElement.GetProperty("drawWatts").GetDouble() < 0.5 * moist.RootElement.GetProperty("drawWatts").GetDouble());
    }

    [Fact]
    public async Task Coil_ForPeople_ShowsTheFadingAndTheCaution()
    {
        CommandLine run = await CommandLine.RunAsync(Plain);
        Assert.Equal(0, run.ExitCode);
        Assert.Matches(@"draw, first hour +\d+ W \(\d+ BTU/h\), outlet 4\d\.\d °C", run.Output);
        Assert.Contains("draw, a month", run.Output, StringComparison.Ordinal);

        // √(4 · 0.4/2.5e6 · 30 d) = 1.288 m.
        Assert.Contains("the cold reaches 1.29 m (4.2 ft) into the bed", run.Output, StringComparison.Ordinal);
        Assert.Contains("30 d of steady draw", run.Output, StringComparison.Ordinal);
        Assert.Contains("local codes and licensed trades decide", run.Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--heap", "101 °C", "--heap is \"101 °C\"; allowed: 0 °C to 95 °C")]
    [InlineData("--inlet", "-2 °C", "--inlet is \"-2 °C\"; allowed: 0 °C to 95 °C")]
    [InlineData("--flow", "0 gal/min", "--flow is \"0 gal/min\"; allowed: 0.001 L/min")]
    [InlineData("--length", "0 m", "--length is \"0 m\"; allowed: 0.01 m to 5000 m")]
    [InlineData("--bed-conductivity", "0 W/mK", "--bed-conductivity is \"0 W/mK\"; allowed: 0.02 W/mK to 5 W/mK")]
    [InlineData("--after", "1 min", "--after is 60 s; allowed: at least 16.4 min")]
    [InlineData("--after", "0 d", "--after is \"0 d\"; allowed:")]
    public async Task Coil_ThatCannotBe_IsWrongUse(string option, string given, string words)
    {
        CommandLine run = await CommandLine.RunAsync(CommandLine.With(Plain, option, given));
        Assert.Equal(2, run.ExitCode);
        Assert.Equal("", run.Output);
        Assert.Contains(words, run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Coil_WithAnOptionTwice_IsWrongUse()
    {
        CommandLine run = await CommandLine.RunAsync([.. Plain, "--tube", "PEX 3/4 in"]);
        Assert.Equal(2, run.ExitCode);
        Assert.Equal("", run.Output);
        Assert.Contains("--tube is given 2 times; allowed: once", run.Error, StringComparison.Ordinal);
    }

    private static async Task<JsonDocument> AnswerAsync(params string[] args)
    {
        CommandLine run = await CommandLine.RunAsync(args);
        Assert.Equal("", run.Error);
        Assert.Equal(0, run.ExitCode);
        return JsonDocument.Parse(run.Output);
    }
}
