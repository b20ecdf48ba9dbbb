namespace PileController.Tests.Commands;

public class WrongUseTests
{
    [Theory]
    [InlineData("--temp is \"40\"; allowed: a temperature needs its unit, for example \"45 °C\" (0 °C to 95 °C)", "calc", "water", "--temp", "40")]
    [InlineData("--temp is \"-5 °C\"; allowed: 0 °C to 95 °C", "calc", "water", "--temp", "-5 °C")]
    [InlineData("--temp is \"20 °F\"; allowed: 0 °C to 95 °C (32 °F to 203 °F)", "calc", "water", "--temp", "20 °F")]
    [InlineData("--temp is missing; allowed: Temperature of the water.", "calc", "water")]
    [InlineData("unknown option --tmp; the nearest known is --temp; allowed: --temp, --json", "calc", "water", "--tmp", "40 °C")]
    [InlineData("unknown command wtaer; the nearest known is water", "calc", "wtaer")]
    [InlineData("PileController calc: a command is missing; allowed: water, air, draw, sun, pipe, pump, coil, line, duct, through-heap, blend, house", "calc")]
    [InlineData("unknown command frobnicate; allowed: serve, check, calc, season, plan, record", "frobnicate")]
    [InlineData("--humidity is \"101\"; allowed: 0.1 to 100 percent", "calc", "air", "--temp", "20 °C", "--humidity", "101")]
    [InlineData("--meter is \"suply\"; allowed: one of \"return\", \"supply\"; the nearest is \"supply\"", "calc", "draw", "--flow", "1 L/s", "--supply", "50 °C", "--return", "40 °C", "--meter", "suply")]
    [InlineData("--flow is \"1 kg\"; allowed: a flow is expected", "calc", "draw", "--flow", "1 kg", "--supply", "50 °C", "--return", "40 °C")]
    [InlineData("--date is \"17.10.2003\"; allowed: a date from 1900-01-01", "calc", "sun", "--latitude", "39.74", "--longitude", "-105.18", "--date", "17.10.2003")]
    [InlineData("--latitude is \"95\"; allowed: -90 to 90 degrees north", "calc", "sun", "--latitude", "95", "--longitude", "0", "--date", "2003-10-17")]
    [InlineData("--utc-offset is \"15\"; allowed: -14 to 14 hours", "calc", "sun", "--latitude", "39.74", "--longitude", "0", "--date", "2003-10-17", "--utc-offset", "15")]
    [InlineData("FILE is missing; allowed: the path of a settings file, or --defaults", "check")]
    [InlineData("FILE is \"/no/such/pile.json\": there is no such file", "check", "/no/such/pile.json")]
    [InlineData("unexpected argument other.json", "check", "pile.json", "other.json")]
    [InlineData("FILE is \"@pile\": there is no such file", "check", "@pile")]
    [InlineData("--mode is \"drwaing\"; allowed: one of \"standby\"", "record", "decisions", "--data", "/no/such", "--mode", "drwaing")]
    [InlineData("--curb is \"stone\"; allowed: one of \"none\"", "record", "decisions", "--data", "/no/such", "--curb", "stone")]
    public async Task WrongUse_IsToldOnTheErrorStreamWithCodeTwo(string words, params string[] args)
    {
        CommandLine run = await CommandLine.RunAsync(args);

        Assert.Equal(2, run.ExitCode);
        Assert.Equal("", run.Output);
        Assert.Contains(words, run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task WrongUse_OfSeveralOptions_IsToldAtOnceAndOnceEach()
    {
        CommandLine run = await CommandLine.RunAsync("calc", "draw", "--flwo", "4 L/min", "--supply", "50");
        string[] lines = run.Error.Split('\n', StringSplitOptions.RemoveEmptyEntries);
        Assert.Collection(
            lines,
            l => Assert.Contains("unknown option --flwo; the nearest known is --flow", l, StringComparison.Ordinal),
            l => Assert.StartsWith("--flow is missing", l, StringComparison.Ordinal),
            l => Assert.StartsWith("--return is missing", l, StringComparison.Ordinal),
            l => Assert.StartsWith("--supply is \"50\"", l, StringComparison.Ordinal),
            l => Assert.Equal("See: PileController calc draw --help", l));
    }
}
