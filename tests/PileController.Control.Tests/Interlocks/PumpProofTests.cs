using PileController.Control.Decisions;
using PileController.Control.Interlocks;

namespace PileController.Control.Tests.Interlocks;

/// <summary>How long a pump runs on without proof of flow or power, tick by tick.</summary>
public sealed class PumpProofTests
{
    private static readonly ControlSettings Settings = new();

    [Theory]
    [InlineData("noFlow")]
    [InlineData("pumpSilent")]
    public void Judge_RunningPumpLosesItsProof_TripsAtTheSecondReadingWhereverTheTicksFall(string id)
    {
        // Ticks come some milliseconds late, now this one, now that; what is early against the one before is none the less the second.
        foreach (long first in (long[])[10_000, 10_180, 9_990])
        {
            foreach (long second in (long[])[20_000, 20_180, 19_990])
            {
                RowRun run = new(Settings, id);
                run.Say(0, At(0, -10_000, -600_000));

                Assert.Equal(Verdict.Pending, run.Say(1, At(first, 0, -600_000)));
                Assert.Equal(Verdict.Latched, run.Say(1, At(second, first, -600_000)));
            }
        }
    }

    [Theory]
    [InlineData("noFlow")]
    [InlineData("pumpSilent")]
    public void Judge_OneReadingWithoutProof_NeverTripsHoweverLongTheTick(string id)
    {
        RowRun run = new(Settings, id);
        run.Say(0, At(0, -10_000, -600_000));

        Assert.Equal(Verdict.Pending, run.Say(1, At(60_000, 0, -600_000)));
        Assert.Equal(Verdict.Clear, run.Say(0, At(120_000, 60_000, -600_000)));
        Assert.Equal(Verdict.Pending, run.Say(1, At(180_000, 120_000, -600_000)));
    }

    [Theory]
    [InlineData("noFlow", 60_000)]
    [InlineData("pumpSilent", 30_000)]
    public void Judge_PumpJustStarted_HasItsGraceAndNotMore(string id, long grace)
    {
        RowRun run = new(Settings, id);
        for (long now = 10_000; now < grace; now += 10_000)
        {
            Assert.Equal(Verdict.Pending, run.Say(1, At(now, now - 10_000, 0)));
        }

        Assert.Equal(Verdict.Latched, run.Say(1, At(grace, grace - 10_000, 0)));
    }

    [Fact]
    public void Judge_AirThatSpurtsWhileALineFills_DoesNotTripWithinTheGrace()
    {
        RowRun run = new(Settings, "noFlow");
        double[] none = [1, 1, 0, 1, 1, 0];
        for (int tick = 0; tick < none.Length; tick++)
        {
            long now = (tick + 1) * 10_000;
            Assert.NotEqual(Verdict.Latched, run.Say(none[tick], At(now, now - 10_000, 0)));
        }
    }

    [Fact]
    public void Judge_MeterAndPowerUnreadable_AreGivenTheGraceInTheMiddleOfARun()
    {
        RowRun run = new(Settings, "noFlow");
        run.Say(0, At(0, -10_000, -600_000));
        for (long now = 10_000; now < 60_000; now += 10_000)
        {
            Assert.Equal(Verdict.Pending, run.Say(double.NaN, At(now, now - 10_000, -600_000)));
        }

        Assert.Equal(Verdict.Latched, run.Say(double.NaN, At(60_000, 50_000, -600_000)));
    }

    [Fact]
    public void Judge_PumpRunsAgainstAValveToldShut_IsGivenTheGraceAndNotMore()
    {
        RowRun run = new(Settings, "noFlow");
        run.Say(0, At(0, -10_000, -600_000));
        for (long now = 10_000; now < 60_000; now += 10_000)
        {
            Assert.Equal(Verdict.Pending, run.Say(1, At(now, now - 10_000, -600_000) with { ValveIsShut = true }));
        }

        Assert.Equal(Verdict.Latched, run.Say(1, At(60_000, 50_000, -600_000) with { ValveIsShut = true }));
    }

    [Fact]
    public void Judge_NoPowerAndNoFlow_ThePowerIsNamed()
    {
        double[] signals = RowRun.AllSound(Settings);
        signals[(int)Signal.NoFlow] = signals[(int)Signal.PumpSilent] = 1;
        InterlockMemory[] memory = [.. InterlockTable.All.Select(_ => new InterlockMemory(0, false, false))];
        InterlockRule.Effect effect = InterlockRule.Judge(Settings, signals, memory, [], RowRun.At(3_600_000)).Effect;
        signals[(int)Signal.Leak] = 1;
        InterlockRule.Effect wet = InterlockRule.Judge(Settings, signals, memory, [], RowRun.At(3_600_000)).Effect;

        Assert.Equal("pumpSilent", InterlockTable.All[effect.First].Id);
        Assert.Equal("leak", InterlockTable.All[wet.First].Id);
    }

    private static Moments At(long now, long before, long pumpSince) => new(now, before, pumpSince, ValveIsShut: false);
}
