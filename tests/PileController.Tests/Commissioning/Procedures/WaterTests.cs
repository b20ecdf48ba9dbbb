using PileController.Commissioning;
using PileController.Commissioning.Procedures;
using PileController.Control.Readings;
using PileController.Parts;
using PileController.Rigs;
using PileController.Settings;
using PileController.Settings.Fields;
using ValveTravel = PileController.Commissioning.Procedures.ValveTravel;

namespace PileController.Tests.Commissioning.Procedures;

/// <summary>Bucket tests, the valve, leak-down and purge.</summary>
public sealed class WaterTests
{
    private static readonly PileSettings Demo = PileSettings.AlderBank;

    // The pump gives 6 L/min at full duty; a reading is the mean of the tick before.
    private static Bench Pumped(Procedure procedure, double full = 6)
    {
        Bench bench = null!;
        bench = new(procedure);
        return bench.Says(Channel.Flow, _ => full * bench.Before.PumpDuty * bench.Before.ValveOpening)
            .Says(Channel.PumpPower, _ => 22 * bench.Before.PumpDuty).Says(Channel.Supply, _ => 40);
    }

    [Fact]
    public void Bucket_EveryPulseOfARun_IsCounted()
    {
        // The step of 120 s is over at a tick, and the pump is told off at the next: 130 s at 6 L/min are 13 L by the meter; the
        // bucket holds 12.5 L: the meter gives 450·13/12.5 = 468 pulses a litre.
        Outcome found = Assert.Single(Pumped(BucketMeter.Of(Demo)).Through(_ => 12.5));

        Assert.Equal(Soundness.Sound, found.Verdict);
        Assert.Equal(468, found.Figure!.Value, 6);

        // No scatter: the bucket's ± 0.1 L in 12.5 L evenly, k = 2: 0.92 %.
        Assert.Equal(2 * 0.1 / Math.Sqrt(3) / 12.5 * 468, found.Uncertainty!.Value, 6);
        Assert.Equal(("rig.pulsesPerLitre", "\"468.0 1/L\"", true), (found.Adopt[0].Path, found.Adopt[0].Json, found.Adopt[0].FromPage));
    }

    [Fact]
    public void Bucket_RunsThatDisagree_AreDoubted()
    {
        Outcome found = Assert.Single(Pumped(BucketMeter.Of(Demo)).Through(id => id == "read-2" ? 13.5 : 12));

        Assert.Equal(Soundness.Doubtful, found.Verdict);
        Assert.Contains("the runs differ by more than 5.0 %", found.Sentence);
    }

    [Fact]
    public void Bucket_TooSmall_FailsAndGivesNothingToAdopt()
    {
        Outcome found = Assert.Single(Pumped(BucketMeter.Of(Demo), full: 0.5).Through(_ => 1));

        Assert.Equal(Soundness.Failed, found.Verdict);
        Assert.Empty(found.Adopt);
    }

    [Fact]
    public void Bucket_MeterThatCountsNothing_Fails() =>
        Assert.Contains("the meter counted nothing", Assert.Single(Pumped(BucketMeter.Of(Demo), full: 0).Through(_ => 12)).Sentence);

    [Fact]
    public void PumpCurve_PointsOfAKnownPump_GiveItBackInAFileThatIsRead()
    {
        // H = 8·d² − 8·(Q/12)²: at full duty 6 L/min at 6 m, at 0.8 3 L/min at 4.62 m, at 0.6 3 L/min at 2.38 m.
        Bench bench = null!;
        bench = Pumped(BucketPump.Of(Demo, BucketPump.UsualDuties(Demo)));
        bench.Says(Channel.Flow, _ => bench.Before.PumpDuty switch { 1 => 6, > 0 => 3, _ => 0 });

        Outcome found = Assert.Single(bench.Through(id => id switch { "head-1" => 6, "head-2" => 4.62, _ => 2.38 }));

        Assert.Equal(Soundness.Sound, found.Verdict);
        Assert.Equal(8, found.Figure!.Value, 1);
        (PumpPart part, FileReading reading) = PartFile.Parse(found.File!, PumpFields.Table, new PumpPart());
        Assert.Empty(reading.Faults);
        Assert.Empty(PumpChecks.Of(part));
        Assert.Equal(3, part.Points.Count);
        Assert.Equal(12, part.Curve().FreeFlowLitresPerMinute, 0);
        Assert.Equal(22, part.Points[0].Watts!.Value, 6);
    }

    [Fact]
    public void PumpCurve_HeadThatRisesWithTheFlow_IsRefusedInWords()
    {
        Outcome found = Assert.Single(Pumped(BucketPump.Of(Demo, [1, 0.5])).Through(id => id == "head-1" ? 4 : 1));

        Assert.Equal(Soundness.Failed, found.Verdict);
        Assert.Contains("These points make no pump", found.Sentence);
        Assert.Null(found.File);
    }

    [Fact]
    public void PumpCurve_WithoutMeters_AsksForWhatTheyWouldTell()
    {
        PileSettings bare = Demo with { Rig = new RigSettings { Probes = [new(Channel.House)] } };
        Procedure procedure = BucketPump.Of(bare, [1, 1]);

        Assert.Equal(["head-1", "flow-1", "power-1", "head-2", "flow-2", "power-2"], procedure.Phases.Where(phase => phase.Question is not null).Select(phase => phase.Id));
        Outcome found = Assert.Single(new Bench(procedure).Through(id => id switch { "head-1" => 8, "head-2" => 6, "flow-1" => 0, "flow-2" => 6, _ => 22 }));
        Assert.Equal(Soundness.Sound, found.Verdict);
    }

    [Fact]
    public void Travel_BothWays_AreTimedFromTheCommandToTheWord()
    {
        Bench bench = new Bench(ValveTravel.Of(Demo)).UntilAsked().Answer(later: 5).UntilAsked();
        bench.Tick().Tick().Tick().Answer(later: 2.4).UntilAsked();
        bench.Tick().Tick().Tick().Answer(later: 0.4);

        Outcome found = Assert.Single(bench.Walk.Found());

        Assert.Equal(Soundness.Sound, found.Verdict);
        Assert.Contains("opens in 32.4 s and shuts in 30.4 s", found.Sentence);
        Assert.Equal(31.4, found.Figure!.Value, 9);
        Assert.Equal("\"31.4 s\"", Assert.Single(found.Adopt).Json);
    }

    [Theory]
    [InlineData(5, 1, Soundness.Doubtful)]
    [InlineData(0, 0, Soundness.Failed)]
    public void Travel_UnevenOrNone_IsSaid(int openTicks, int shutTicks, Soundness verdict)
    {
        Bench bench = new Bench(ValveTravel.Of(Demo)).UntilAsked().Answer().UntilAsked();
        for (int i = 0; i < openTicks; i++)
        {
            bench.Tick();
        }

        bench.Answer().UntilAsked();
        for (int i = 0; i < shutTicks; i++)
        {
            bench.Tick();
        }

        Assert.Equal(verdict, Assert.Single(bench.Answer().Walk.Found()).Verdict);
    }

    [Theory]
    [InlineData(0, 0, 1, 0, Soundness.Sound)]
    [InlineData(5, 0, 1, 0, Soundness.Doubtful)]
    [InlineData(50, 0, 1, 0, Soundness.Failed)]
    [InlineData(0, 1, 1, 0, Soundness.Failed)]
    [InlineData(0, 0, 0, 0, Soundness.Failed)]
    [InlineData(0, 0, 1, 10, Soundness.Doubtful)]
    public void Leak_MarkSwitchesAndCooling_AreAllHeeded(double fallMm, double leak, double level, double cools, Soundness verdict)
    {
        Bench bench = new Bench(LeakDown.Of(Demo)).Says(Channel.Leak, _ => leak).Says(Channel.Level, _ => level)
            .Says(Channel.Supply, seconds => 40 - (cools * (seconds - 1000) / 1800));

        Assert.Equal(verdict, Assert.Single(bench.Through(_ => fallMm)).Verdict);
    }

    [Fact]
    public void Purge_FlowThatSteadies_EndsByItselfAndIsSound()
    {
        Bench bench = null!;
        bench = Pumped(AirPurge.Of(Demo));
        bench.Says(Channel.Flow, seconds => bench.Before.PumpDuty == 0 ? 0 : 6 + (seconds - bench.StepBegan < 300 ? 2 * Math.Sin(seconds) : 0));

        Outcome found = Assert.Single(bench.Through());

        Assert.Equal(Soundness.Sound, found.Verdict);
        Assert.InRange(bench.Walk.Traces[1].Seconds, 340, 400);
    }

    [Fact]
    public void Purge_FlowThatNeverSteadies_FailsAtItsMost()
    {
        Bench bench = null!;
        bench = Pumped(AirPurge.Of(Demo));
        bench.Says(Channel.Flow, seconds => 6 + (2 * Math.Sin(seconds)));

        Assert.Contains("there is still air in it after 20 min", Assert.Single(bench.Through()).Sentence);
    }

    [Fact]
    public void Purge_NoFlow_SaysWhatThatMeans() =>
        Assert.Contains("No water moved", Assert.Single(Pumped(AirPurge.Of(Demo), full: 0).Through()).Sentence);
}
