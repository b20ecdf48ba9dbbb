using PileController.Commissioning;
using PileController.Commissioning.Procedures;
using PileController.Control.Readings;
using PileController.Rigs;
using PileController.Settings;

namespace PileController.Tests.Commissioning.Procedures;

/// <summary>Finding a probe, the ice point, and the pair.</summary>
public sealed class ProbeTests
{
    private const double Step = 1.0 / 16;

    private static readonly PileSettings Demo = PileSettings.AlderBank;

    // Noise of one step up and down, the same each time.
    private static double Flicker(double seconds) => (int)(seconds / 10) % 2 == 0 ? Step : 0;

    private static Bench Probes(Procedure procedure, params (Channel Channel, Func<double, double?> Says)[] others)
    {
        Bench bench = new(procedure);
        foreach (Channel channel in Fitted.Thermometers(Demo))
        {
            bench.Says(channel, seconds => 40 + (int)channel + Flicker(seconds));
        }

        foreach ((Channel channel, Func<double, double?> says) in others)
        {
            bench.Says(channel, says);
        }

        return bench;
    }

    [Theory]
    [InlineData(8, "rose by +8")]
    [InlineData(-9, "fell by +9")]
    public void Find_OneProbeMoves_IsNamed(double kelvin, string words)
    {
        Bench bench = null!;
        bench = Probes(FindProbe.Of(Demo), (Channel.Return, seconds => 30 + (bench.Walk.Step == 1 ? 0 : kelvin * Math.Min(1, (seconds - bench.StepBegan) / 60))));

        Outcome found = Assert.Single(bench.Through());

        Assert.Equal(("return", Soundness.Sound), (found.Subject, found.Verdict));
        Assert.Contains(words, found.Sentence);
        Assert.Equal(Math.Abs(kelvin), found.Figure!.Value, 1);
    }

    [Fact]
    public void Find_TwoProbesMove_SaysThatItIsAmbiguousAndNamesBoth()
    {
        Bench bench = null!;
        double Warms(double seconds) => bench.Walk.Step == 1 ? 20 : 20 + (0.1 * (seconds - bench.StepBegan));
        bench = Probes(FindProbe.Of(Demo), (Channel.Supply, seconds => Warms(seconds)), (Channel.House, seconds => 0.5 * Warms(seconds)));

        Outcome found = Assert.Single(bench.Through());

        Assert.Equal(Soundness.Doubtful, found.Verdict);
        Assert.Contains("Ambiguous: Supply rose", found.Sentence);
        Assert.Contains("House air by", found.Sentence);
    }

    [Fact]
    public void Find_NobodyMoves_Fails()
    {
        Outcome found = Assert.Single(Probes(FindProbe.Of(Demo)).Through());

        Assert.Equal(Soundness.Failed, found.Verdict);
        Assert.Contains("No probe moved clearly", found.Sentence);
    }

    [Fact]
    public void Find_NoProbeAnswers_Fails()
    {
        Assert.Equal(Soundness.Failed, Assert.Single(new Bench(FindProbe.Of(Demo)).Through()).Verdict);
    }

    [Fact]
    public void Ice_RestedProbe_GivesItsOffsetOverTheOneItHas()
    {
        PileSettings settings = Demo with
        {
            Rig = Demo.Rig with { Probes = [.. Demo.Rig.Probes.Select(p => p.Channel == Channel.Supply ? p with { OffsetKelvin = 0.1 } : p)] },
        };
        Bench bench = Probes(IcePoint.Of(settings, [Channel.Supply]), (Channel.Supply, _ => 0.25));

        Outcome found = Assert.Single(bench.Through());

        Assert.Equal(Soundness.Sound, found.Verdict);
        Assert.Equal(-0.15, found.Figure!.Value, 12);

        // Grain 1/16 K as ± 1/32 evenly, bath ± 0.1 K evenly, no noise: 2·√((1/32)² + 0.1²)/√3 = 0.12098 K, by hand.
        Assert.Equal(0.12098, found.Uncertainty!.Value, 5);
        SettingsLine line = Assert.Single(found.Adopt);
        Assert.Equal(("rig.probes (supply) offset", "\"-0.15 K\"", false), (line.Path, line.Json, line.FromPage));
    }

    [Fact]
    public void Ice_ProbeThatStillCools_WaitsUntilItRests()
    {
        Bench bench = null!;
        bench = Probes(IcePoint.Of(Demo, [Channel.HeapCore]), (Channel.HeapCore, seconds => 58 * Math.Exp(-(seconds - bench.StepBegan) / 120)));

        Outcome found = Assert.Single(bench.Through());

        // 58·e^(-t/120) falls by less than a step in three minutes from about 800 s on.
        Assert.InRange(bench.Walk.Traces[1].Seconds, 800, 1300);
        Assert.Equal(Soundness.Sound, found.Verdict);
        Assert.InRange(found.Figure!.Value, -0.1, 0);
    }

    [Fact]
    public void Ice_NeverRests_FailsAndGivesNothingToAdopt()
    {
        Bench bench = Probes(IcePoint.Of(Demo, [Channel.Supply]), (Channel.Supply, seconds => seconds / 600 % 3));

        Outcome found = Assert.Single(bench.Through());

        Assert.Equal(Soundness.Failed, found.Verdict);
        Assert.Contains("did not come to rest within 30 min", found.Sentence);
        Assert.Empty(found.Adopt);
    }

    [Theory]
    [InlineData(0.8, Soundness.Doubtful, 1)]
    [InlineData(6, Soundness.Failed, 0)]
    public void Ice_FurtherOffThanSuchAProbeMayBe_SaysSo(double celsius, Soundness verdict, int lines)
    {
        Outcome found = Assert.Single(Probes(IcePoint.Of(Demo, [Channel.Supply]), (Channel.Supply, _ => celsius)).Through());

        Assert.Equal(verdict, found.Verdict);
        Assert.Equal(lines, found.Adopt.Count);
    }

    [Fact]
    public void Pair_FlickeringDifference_IsItsMeanWithItsUncertainty()
    {
        // The difference goes 0.25, 0.3125 K, turn about.
        Bench bench = Probes(ProbePair.Of(Demo), (Channel.Supply, seconds => 21.25 + Flicker(seconds)), (Channel.Return, _ => 21));

        Outcome found = Assert.Single(bench.Through());

        Assert.Equal(Soundness.Sound, found.Verdict);
        Assert.Equal(0.25 + (Step / 2), found.Figure!.Value, 12);

        // Two grains of ± 1/32 K evenly, 18 looks of deviation 0.0322 K, no more than a hundredth of drift, bucket ± 0.03 K evenly.
        Assert.InRange(found.Uncertainty!.Value, 0.0635, 0.0645);
        Assert.Equal("\"0.28 K\"", Assert.Single(found.Adopt).Json);
    }

    [Theory]
    [InlineData(0.75, Soundness.Doubtful)]
    [InlineData(1.5, Soundness.Failed)]
    public void Pair_FarApart_SaysSo(double kelvin, Soundness verdict) =>
        Assert.Equal(verdict, Assert.Single(Probes(ProbePair.Of(Demo), (Channel.Supply, _ => 20 + kelvin), (Channel.Return, _ => 20)).Through()).Verdict);

    [Theory]
    [InlineData(ValveSafe.Open, false)]
    [InlineData(ValveSafe.Stays, false)]
    [InlineData(ValveSafe.Shut, true)]
    public void Ice_OnARealRig_HoldsTheValveShutOnlyWhereThatIsSafe(ValveSafe safe, bool held) =>
        Assert.Equal(held, IcePoint.Of(OnARig(safe), [Channel.Supply]).Phases[0].Moves.Any(move => move.Actuator == PileController.Control.Decisions.Actuator.Valve));

    [Fact]
    public void WhyNot_RigWithoutWhatATestNeeds_IsSaidInASentence()
    {
        PileSettings bare = Demo with { Rig = new RigSettings { Probes = [new(Channel.House)] }, Loop = Demo.Loop with { ValveTravelSeconds = 0 } };

        Assert.All((string[])["ice", "pair", "bucket", "purge", "travel"], id => Assert.NotNull(Catalogue.WhyNot(id, bare, new TestAsk())));
        Assert.All((string[])["find", "leak", "pump-curve", "exercise", "wind-down"], id => Assert.Null(Catalogue.WhyNot(id, bare, new TestAsk())));
        Assert.Null(Catalogue.WhyNot("travel", OnARig(ValveSafe.Open), new TestAsk()));
        Assert.Equal("supply has no temperature probe here; allowed: house.", Catalogue.WhyNot("ice", bare, new TestAsk { Channels = [Channel.Supply] }));
    }

    private static PileSettings OnARig(ValveSafe safe) =>
        Demo with { Rig = Demo.Rig with { Simulated = false, Hardware = Demo.Rig.Hardware with { Valve = new ValveSettings { Safe = safe } } } };
}
