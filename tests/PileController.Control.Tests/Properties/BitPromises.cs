using System.Text.Json;
using PileController.Control.Decisions;
using PileController.Control.Interlocks;
using PileController.Control.Tests.Support;

namespace PileController.Control.Tests.Properties;

/// <summary>What is decided can be written, read and decided again to the last bit.</summary>
internal static class BitPromises
{
    private const int WrittenEvery = 16;

    public static IReadOnlyList<Promise> All { get; } =
    [
        Promise.OfEach("every figure is a number", IsWritten),
        new("a run taken up from a written memory goes on to the same bits", GoesOn),
    ];

    // A figure that is none spoils the sum it is in; writing throws at one anywhere. Between two writings the sums look out.
    private static void IsWritten(Tick tick)
    {
        Memory after = tick.After;
        Decision decision = tick.Decision;
        bool news = !ReferenceEquals(after.Estimator.Belief, tick.Before.Estimator.Belief) || after.LookedAtMonotonicMilliseconds != tick.Before.LookedAtMonotonicMilliseconds;
        if (news || tick.IsLast || tick.Index % WrittenEvery == 0)
        {
            Assert.NotEmpty(Bits.Of(decision));
            Assert.NotEmpty(Bits.Of(after));
        }

        Assert.True(double.IsFinite(Sum(decision) + Sum(after)), "a figure is not a number");
        Assert.Equal(InterlockTable.All.Count, decision.Verdicts.Length);
        Assert.True(decision.GrantWatts >= 0 && decision.WantWatts >= 0 && decision.MeansWatts >= 0);
    }

    private static double Sum(Decision d) =>
        d.WantWatts + d.MeansWatts + d.WaterGrantWatts + d.AirGrantWatts + d.HouseSetPointCelsius
        + d.Estimate.CoreCelsius + d.Estimate.ActiveZoneCelsius + d.Estimate.TurnsCelsius + d.Estimate.UncertaintyKelvin
        + d.Estimate.GenerationWatts + d.Draw.WaterWatts + d.Draw.AirWatts + d.Draw.FlowLitresPerMinute
        + d.Outputs.PumpDuty + d.Outputs.ValveOpening + d.Outputs.BlowerDuty;

    private static double Sum(Memory m) =>
        m.Totals.WaterJoules + m.Totals.Litres + m.Estimator.LeastZoneC + m.Estimator.NetW + m.Estimator.VarianceK2 + m.Estimator.OutsideC
        + m.Estimator.Tally.WaterJ + m.Estimator.Tally.ReturnJ + m.Weather.NowC + m.House.State.AirC + m.House.State.TankC
        + m.Regulators.WaterCreditJoules + m.Regulators.WaterYieldWatts + m.Regulators.FlowExcess + m.Regulators.AirCreditJoules
        + m.Regulators.AirYieldWatts;

    private static Action<Tick> GoesOn()
    {
        Memory? back = null;
        return tick =>
        {
            if (tick.Index == tick.Count / 2)
            {
                back = JsonSerializer.Deserialize<Memory>(Bits.Of(tick.Before))!;
            }
            else if (back is not null && tick.Move.Restart)
            {
                back = back.AfterRestart();
            }

            if (back is null)
            {
                return;
            }

            (Decision again, back) = Controller.Step(tick.Settings, back, tick.Move.Readings, tick.Move.Commands, tick.Decision.At);
            Assert.True(Same(tick.Decision, again), $"{Bits.Of(tick.Decision)}\nand again\n{Bits.Of(again)}");
            if (tick.IsLast)
            {
                Assert.Equal(Bits.Of(tick.After), Bits.Of(back));
            }
        };
    }

    // All of a decision; what is an array is compared by what is in it.
    private static bool Same(Decision one, Decision two) =>
        one == two with { Readings = one.Readings, Verdicts = one.Verdicts, Hands = one.Hands }
        && one.Readings.AsSpan().SequenceEqual(two.Readings.AsSpan())
        && one.Verdicts.AsSpan().SequenceEqual(two.Verdicts)
        && one.Hands.SequenceEqual(two.Hands);
}
