using PileController.Commissioning;
using PileController.Commissioning.Procedures;
using PileController.Control.Readings;
using PileController.Rigs;
using PileController.Settings;

namespace PileController.Tests.Commissioning.Procedures;

public sealed class ExerciseTests
{
    private static readonly PileSettings Demo = PileSettings.AlderBank;

    private static Bench Rig(PileSettings settings, bool pumpTurns = true, bool valveMoves = true, bool blowerTurns = true, bool pumpMetered = true)
    {
        Bench bench = null!;
        bench = new(Exercise.Of(settings));
        return bench.Says(Channel.Flow, _ => pumpTurns ? 6 * bench.Before.PumpDuty * (valveMoves ? bench.Before.ValveOpening : 1) : 0)
            .Says(Channel.PumpPower, _ => pumpTurns && pumpMetered ? 22 * bench.Before.PumpDuty : 0)
            .Says(Channel.BlowerPower, _ => blowerTurns ? 9 * bench.Before.BlowerDuty : 0);
    }

    [Fact]
    public void Exercise_SoundRig_ProvesEachActuatorWithItsFigure()
    {
        IReadOnlyList<Outcome> found = Rig(Demo).Through();

        Assert.Equal([("pump", Soundness.Sound), ("valve", Soundness.Sound), ("blower", Soundness.Sound)], found.Select(one => (one.Subject, one.Verdict)));
        Assert.Equal(10, found[0].Figure);
        Assert.Equal(100, found[1].Figure);
        Assert.Equal(9, found[2].Figure);
    }

    [Theory]
    [InlineData(false, true, true, true, "pump", "no water moved")]
    [InlineData(true, false, true, true, "valve", "the flow lost 0.0 %")]
    [InlineData(true, true, false, true, "blower", "took no power")]
    [InlineData(true, true, true, false, "pump", "took no power")]
    public void Exercise_OneThatDoesNotObey_FailsWithWhatToLookAt(bool pump, bool valve, bool blower, bool metered, string subject, string words)
    {
        IReadOnlyList<Outcome> found = Rig(Demo, pump, valve, blower, metered).Through();

        Outcome failed = found.Single(one => one.Subject == subject);
        Assert.Equal(Soundness.Failed, failed.Verdict);
        Assert.Contains(words, failed.Sentence);
    }

    [Fact]
    public void Exercise_WaterThatMovesAtRest_IsDoubted()
    {
        Bench bench = Rig(Demo).Says(Channel.Flow, _ => 3);

        Assert.Equal(Soundness.Doubtful, bench.Through()[0].Verdict);
    }

    [Theory]
    [InlineData(1, Soundness.Sound)]
    [InlineData(0, Soundness.Failed)]
    public void Exercise_RigWithoutProbes_AsksTheEye(double answer, Soundness verdict)
    {
        PileSettings bare = Demo with { Rig = new RigSettings { Probes = [new(Channel.House)] }, Control = Demo.Control with { BackupFitted = true } };

        IReadOnlyList<Outcome> found = new Bench(Exercise.Of(bare)).Through(_ => answer);

        Assert.Equal(["pump", "valve", "blower", "backup"], found.Select(one => one.Subject));
        Assert.All(found, one => Assert.Equal(verdict, one.Verdict));
    }

    [Fact]
    public void WindDown_Checklist_NamesWhatIsNotDone()
    {
        IReadOnlyList<Outcome> all = new Bench(WindDown.Of()).Through(id => id == "weight" ? 5200 : 1);
        IReadOnlyList<Outcome> some = new Bench(WindDown.Of()).Through(id => id is "drain" or "weight" ? 0 : 1);

        Assert.Equal((Soundness.Sound, 5200.0), (all[0].Verdict, all[0].Figure));
        Assert.Contains("the heap weighs 5200 kg", all[0].Sentence);
        Assert.Equal(Soundness.Doubtful, some[0].Verdict);
        Assert.Contains("Not done yet: drain; the heap stays", some[0].Sentence);
    }
}
