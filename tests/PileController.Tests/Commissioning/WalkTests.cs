using PileController.Commissioning;
using PileController.Control.Decisions;
using PileController.Settings;

namespace PileController.Tests.Commissioning;

public sealed class WalkTests
{
    private static readonly Procedure Pump = new(
        "trial", "A trial", [],
        [
            new("ask", "Ready?") { Moves = [new(Actuator.Pump, 0)], Asks = true, MostSeconds = 60 },
            new("run", "Runs.") { Moves = [new(Actuator.Pump, 0.5)], LeastSeconds = 20, MostSeconds = 50, Enough = looks => looks.Count >= 4 },
        ],
        _ => [new Outcome("pump", Soundness.Sound, "Done.")]);

    [Fact]
    public void Take_TickByTick_LastsUntilItHasSeenEnough()
    {
        Bench bench = new Bench(Pump).UntilAsked().Answer();

        bench.Tick().Tick().Tick();
        Assert.False(bench.Walk.Ended);
        bench.Tick();

        Assert.True(bench.Walk.Ended);
        Assert.Equal(30, bench.Walk.Traces[1].Seconds);
        Assert.Equal("Done.", Assert.Single(bench.Walk.Found()).Sentence);
        Assert.Empty(bench.Walk.Wanted);
    }

    [Fact]
    public void Take_NeverEnough_EndsAtItsMost()
    {
        Bench bench = new(Pump with { Phases = [Pump.Phases[1] with { Enough = _ => false }] });

        bench.Through();

        Assert.Equal(50, bench.Walk.Traces[0].Seconds);
    }

    [Fact]
    public void Take_CommandThatShowsATickLater_BeginsOnlyThen()
    {
        Bench bench = new Bench(Pump).UntilAsked().Answer();
        bench.Tells = outputs => outputs with { PumpDuty = 0 };
        bench.Tick();
        bench.Tells = outputs => outputs;
        double began = bench.Seconds + 10;
        bench.Tick();

        Assert.Equal(began, bench.Walk.Traces[1].BeganSeconds);
    }

    [Fact]
    public void Take_ActuatorThatIsNeverToldSo_IsGivenUpAndFails()
    {
        Bench bench = new(Pump) { Tells = outputs => outputs with { PumpDuty = 0.4 } };

        Outcome found = Assert.Single(bench.Through());

        Assert.Equal(Soundness.Failed, found.Verdict);
        Assert.Contains("given up at step 1 of 2. The pump is not told what the test asks for", found.Sentence);
    }

    [Fact]
    public void Take_HoldThatEndsInBetween_IsGivenUpAtOnce()
    {
        Bench bench = new Bench(Pump).UntilAsked().Answer();
        bench.Tick();
        bench.Tells = _ => Outputs.Safe;
        bench.Tick();

        Assert.True(bench.Walk.Ended);
        Assert.Equal(Soundness.Failed, Assert.Single(bench.Walk.Found()).Verdict);
    }

    [Fact]
    public void Take_Trip_IsGivenUpWithItsSentence()
    {
        Bench bench = new Bench(Pump).Tick().Tick("The rig is tripped: the leak switch is wet.");

        Assert.Contains("the leak switch is wet", Assert.Single(bench.Walk.Found()).Sentence);
        Assert.Empty(bench.Walk.Wanted);
    }

    [Fact]
    public void Take_NobodyAnswersWhileSomethingIsHeld_IsGivenUp()
    {
        Bench bench = new(Pump);
        for (int i = 0; i < 8; i++)
        {
            bench.Tick();
        }

        Assert.Contains("Nobody answered within 1 min", Assert.Single(bench.Walk.Found()).Sentence);
    }

    [Fact]
    public void Answer_BeforeTheActuatorsAreTold_ChangesNothing()
    {
        Bench bench = new(Pump);

        Assert.Equal(bench.Walk, bench.Walk.Answer(0));
    }

    [Fact]
    public void Moving_EveryTestOfTheDemo_NamesWhatMovesAndToWhat()
    {
        IEnumerable<string> said = Catalogue.Ids.Select(id => $"{id}: {string.Join("; ", Catalogue.Of(id, PileSettings.AlderBank, new TestAsk()).Moving)}");

        Assert.Equal(
            [
                "find: pump (off); valve (open); blower (off)", "ice: ", "pair: ", "leak: pump (off); valve (open); blower (off)",
                "purge: pump (off, 100 %); valve (open); blower (off)", "bucket: pump (off, 100 %); valve (open); blower (off)",
                "pump-curve: pump (off, 100 %, 80 %, 60 %); valve (open); blower (off)", "travel: pump (off); valve (shut, open); blower (off)",
                "exercise: pump (off, 100 %); valve (open, shut); blower (off, 100 %)", "wind-down: ",
            ],
            said);
    }

    [Fact]
    public void Hold_OfEveryStep_EndsByItself()
    {
        PileSettings settings = PileSettings.AlderBank with { Control = PileSettings.AlderBank.Control with { BackupFitted = true } };
        foreach (Phase phase in Catalogue.Ids.SelectMany(id => Catalogue.Of(id, settings, new TestAsk()).Phases).Where(phase => phase.Moves.Count > 0))
        {
            Assert.InRange(phase.HoldSeconds, 60, 3 * 3600);
        }
    }
}
