using System.Text.Json;

namespace PileController.Tests.Commands.Calc;

public class CalcPipeTests
{
    private static readonly string[] Plain = ["calc", "pipe", "--tube", "PEX 1/2 in", "--length", "100 ft", "--flow", "1 gal/min", "--temp", "20 °C"];

    [Theory]

    // HYD-032, HYD-037 (Darcy-Weisbach and Colebrook with the fluids library 1.0.22, IF97 water), psi per 100 ft at 20 °C.
    [InlineData("pressureDropPa", 1.9312 * 6894.757, 0.03, "PEX 1/2 in")]
    [InlineData("psiPer100Ft", 0.3779, 0.03, "3/4 in PEX")]

    // HYD-047, HYD-051: Reynolds numbers of the same.
    [InlineData("reynolds", 6636, 0.01, "1/2 in PEX")]
    [InlineData("reynolds", 4698, 0.01, "PEX 3/4 in")]

    // HYD-084 at 40 °C is 136.3; the thin copper line costs no less in colder water.
    [InlineData("psiPer100Ft", 150, 0.1, "copper 1/4 in")]

    // By hand: 6.309e-5 m³/s through π/4 · (12.065 mm)².
    [InlineData("velocityMPerS", 0.5518, 1e-3, "1/2 in PEX")]
    public async Task Pipe_AtOneGallon_GivesThePublishedFigure(string key, double expected, double relative, string tube)
    {
        using JsonDocument answer = await AnswerAsync(
            "calc", "pipe", "--tube", tube, "--length", "100 ft", "--flow", "1 gal/min", "--temp", "20 °C", "--json");
        Assert.Equal(expected, answer.RootElement.GetProperty(key).GetDouble(), relative * expected);
    }

    [Fact]
    public async Task Pipe_ForMachines_HasTheAgreedKeysFirst()
    {
        using JsonDocument answer = await AnswerAsync([.. Plain, "--json"]);
        Assert.Equal(
            "velocityMPerS,reynolds,frictionFactor,pressureDropPa,headM",
            string.Join(',', answer.RootElement.EnumerateObject().Take(5).Select(p => p.Name)));
    }

    [Fact]
    public async Task Fittings_GivenSeveralTimes_AreAddedToTheFriction()
    {
        using JsonDocument bare = await AnswerAsync([.. Plain, "--json"]);
        using JsonDocument fitted = await AnswerAsync([.. Plain, "--fitting", "entrance", "--fitting", "exit:2", "--json"]);
        double loss = fitted.RootElement.GetProperty("fittingLossPa").GetDouble();

        // 2.5 velocity heads of 998.2 kg/m³ at 0.5518 m/s.
        Assert.Equal(2.5 * 998.2 / 2 * 0.5518 * 0.5518, loss, 1.0);
        Assert.Equal(bare.RootElement.GetProperty("pressureDropPa").GetDouble() + loss, fitted.RootElement.GetProperty("pressureDropPa").GetDouble(), 1e-6);
    }

    [Fact]
    public async Task Pipe_InTurns_CostsMore()
    {
        using JsonDocument straight = await AnswerAsync([.. Plain, "--json"]);
        using JsonDocument wound = await AnswerAsync([.. Plain, "--turns", "6 ft", "--json"]);

        // Schmidt: 28 800/6636 · (12.065 mm / 1.829 m)^0.62 = 0.193 more.
        Assert.Equal(
            1.193, wound.RootElement.GetProperty("pressureDropPa").GetDouble() / straight.RootElement.GetProperty("pressureDropPa").GetDouble(), 3e-3);
    }

    [Theory]
    [InlineData("1 gal/min", false)]
    [InlineData("1.2 gal/min", true)]
    public async Task Pipe_AboutTheSpeedThatCarriesBubbles_SaysWhetherItPurges(string flow, bool purges)
    {
        using JsonDocument answer = await AnswerAsync(
            "calc", "pipe", "--tube", "PEX 1/2 in", "--length", "100 ft", "--flow", flow, "--temp", "60 °F", "--json");
        Assert.Equal(purges, answer.RootElement.GetProperty("purgesAir").GetBoolean());
    }

    [Fact]
    public async Task Pipe_ForPeople_ShowsBothSystems()
    {
        CommandLine run = await CommandLine.RunAsync([.. Plain, "--fitting", "elbow:6"]);
        Assert.Equal(0, run.ExitCode);
        Assert.Contains("0.55 m/s (1.81 ft/s)", run.Output, StringComparison.Ordinal);
        Assert.Matches(@"pressure drop +1\d\.\d\d kPa \(\d\.\d{3} psi\)", run.Output);
        Assert.Matches(@"6 × elbow +5\.0\d velocity heads \(Crane TP-410 multiple, from memory\)", run.Output);
        Assert.Matches(@"head +1\.\d\d m \(\d\.\d ft\)", run.Output);
    }

    [Theory]
    [InlineData("--length", "-3 ft", "--length is \"-3 ft\"; allowed: 0.01 m to 5000 m")]
    [InlineData("--flow", "0 L/min", "--flow is \"0 L/min\"; allowed: 0.001 L/min to 1000 L/min")]
    [InlineData("--temp", "213 °F", "--temp is \"213 °F\"; allowed: 0 °C to 95 °C (32 °F to 203 °F)")]
    [InlineData("--temp", "-1 °C", "--temp is \"-1 °C\"; allowed: 0 °C to 95 °C")]
    [InlineData("--tube", "PEX 1/3 in", "; the nearest is \"1/2 in PEX\"")]
    [InlineData("--tube", "drain", "--tube is \"drain\"; allowed: one of \"3/8 in PEX\", \"1/2 in PEX\"")]
    [InlineData("--fitting", "elbwo:2", "--fitting is \"elbwo:2\"; allowed: \"name:count\" with a count of 1 to 1000 and a name of elbow, ")]
    [InlineData("--fitting", "elbwo:2", "the nearest is \"elbow\"")]
    [InlineData("--fitting", "elbow:0", "--fitting is \"elbow:0\"; allowed: \"name:count\"")]
    [InlineData("--fitting", "elbow:many", "--fitting is \"elbow:many\"")]
    public async Task Pipe_ThatCannotBe_IsWrongUse(string option, string given, string words)
    {
        CommandLine run = await CommandLine.RunAsync([.. CommandLine.With(Plain, option, given), "--json"]);
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
