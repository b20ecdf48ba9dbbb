using System.Text.Json;
using PileController.Control.Decisions;
using PileController.Control.Foresight;
using PileController.Control.Tests.Support;

namespace PileController.Control.Tests.Foresight;

public sealed class ForecastTests
{
    private const long Start = 1_737_936_000_000;
    private static readonly Forecast Good = new(Start, [1, 2, 3], [0, 10, 1400], "a test");

    public static TheoryData<Forecast, string> Bad => new()
    {
        { Good with { OutsideC = [] }, "outsideC has 0 hours; allowed are 1 to 240." },
        { Good with { OutsideC = new double[241], SunWPerM2 = null }, "outsideC has 241 hours; allowed are 1 to 240." },
        { Good with { OutsideC = [1, 60.5, 3] }, "outsideC[1] is 60.5; allowed is -60 to 60 °C." },
        { Good with { OutsideC = [1, 2, double.NaN] }, "outsideC[2] is NaN; allowed is -60 to 60 °C." },
        { Good with { SunWPerM2 = [0, 0] }, "sunWPerM2 has 2 hours; allowed are as many as outsideC has, 3, or none at all." },
        { Good with { SunWPerM2 = [0, -1, 0] }, "sunWPerM2[1] is -1; allowed is 0 to 1400 W/m²." },
        { Good with { FromUtcMilliseconds = Start + 1 }, "fromUtc is 2025-01-27T00:00:00Z; allowed is a whole hour." },
        { Good with { FromUtcMilliseconds = Start - (8 * 86_400_000L) }, "fromUtc is 2025-01-19T00:00:00Z; allowed is at most 7 days before now, 2025-01-27T00:00:00Z." },
        { Good with { FromUtcMilliseconds = Start + (11 * 86_400_000L) }, "fromUtc is 2025-02-07T00:00:00Z; allowed is at most 10 days after now, 2025-01-27T00:00:00Z." },
    };

    [Fact]
    public void Fault_OfASoundForecast_IsNone()
    {
        Assert.Null(Good.Fault(Start));
        Assert.Null((Good with { SunWPerM2 = null }).Fault(Start));
    }

    [Theory]
    [MemberData(nameof(Bad))]
    public void Fault_OfABadForecast_SaysWhatWasGivenAndWhatIsAllowed(Forecast forecast, string fault) =>
        Assert.Equal(fault, forecast.Fault(Start));

    [Fact]
    public void Tick_GivenAForecast_KeepsItOverARestart()
    {
        Bench bench = new();
        bench.Tick(new TakeForecast(Good));
        Assert.Same(Good, bench.Memory.Forecast);
        bench.Memory = bench.Memory.AfterRestart();
        bench.Tick();
        Assert.Same(Good, bench.Memory.Forecast);
    }

    [Fact]
    public void Tick_GivenABadForecast_KeepsTheOneBeforeAndSaysWhy()
    {
        Bench bench = new();
        bench.Tick(new TakeForecast(Good));
        Decision decision = bench.Tick(new TakeForecast(Good with { OutsideC = [1, 99, 3] }));

        Assert.Same(Good, bench.Memory.Forecast);
        Assert.Equal("A forecast was refused: outsideC[1] is 99; allowed is -60 to 60 °C.", decision.Note);
        Assert.True(decision.Kinds.HasFlag(DecisionKinds.Warning));
    }

    [Fact]
    public void Json_OfACommandThatTakesAForecast_ComesBack()
    {
        string written = JsonSerializer.Serialize<Command>(new TakeForecast(Good));
        TakeForecast back = Assert.IsType<TakeForecast>(JsonSerializer.Deserialize<Command>(written));
        Assert.Equal(written, JsonSerializer.Serialize<Command>(back));
        Assert.Equal(Good.OutsideC, back.Forecast.OutsideC);
    }

    [Fact]
    public void Json_OfAMemoryThatHasLearned_GoesOnToTheSameBits()
    {
        Bench bench = new();
        bench.Tick(new TakeForecast(Good));
        for (int i = 0; i < 40 * 60; i++)
        {
            bench.TickAfter(60);
        }

        Memory back = JsonSerializer.Deserialize<Memory>(JsonSerializer.Serialize(bench.Memory))!;
        Memory memory = bench.Memory;
        for (int i = 1; i <= 8 * 60; i++)
        {
            Instant at = new(Start + bench.Now + (i * 60_000), bench.Now + (i * 60_000), 0);
            (_, memory) = Controller.Step(bench.Settings, memory, bench.Said(), [], at);
            (_, back) = Controller.Step(bench.Settings, back, bench.Said(), [], at);
            Assert.Equal(Bits.Of(memory), Bits.Of(back));
        }
    }
}
