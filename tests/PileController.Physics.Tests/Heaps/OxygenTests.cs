using PileController.Physics.Heaps;
using PileController.Physics.Plants;
using PileController.Physics.Sky.Weather;
using PileController.Physics.Tests.Plants;

namespace PileController.Physics.Tests.Heaps;

/// <summary>Nothing burns beyond the oxygen that the air carries in, at any minute of a winter.</summary>
public class OxygenTests
{
    [Theory]
    [InlineData(1e-9, false)]
    [InlineData(2e-11, false)]
    [InlineData(1e-9, true)]
    public void OxygenTaken_AtEachMinuteOfASeason_IsNoMoreThanCarriedIn(double permeabilityM2, bool throughHeap)
    {
        Plant plant = Winter(new HeapBuild
        {
            PermeabilityM2 = permeabilityM2,
            Duct = new DuctBuild { ThroughHeap = throughHeap, FullFlowM3PerS = 0.004 },
        });
        RandomHands hands = new(41);
        HeapLedger before = plant.Heap.Ledger;
        for (int minute = 0; minute < 150 * 1440; minute++)
        {
            plant.Step(hands.Minute(), 60);
            HeapLedger now = plant.Heap.Ledger;
            double taken = now.OxygenTakenKg - before.OxygenTakenKg;
            double carried = now.OxygenInKg - before.OxygenInKg;

            // Differences of season-long sums: a few parts in 1e16 of the sum is all they can be wrong by.
            if (taken < 0 || taken > carried + (4e-16 * now.OxygenInKg))
            {
                Assert.Fail($"Minute {minute}: {taken:R} kg of oxygen taken, {carried:R} kg carried in.");
            }

            before = now;
        }

        Assert.InRange(before.OxygenTakenKg, 1, before.OxygenInKg);
    }

    [Fact]
    public void OxygenTaken_InATightHeap_IsNearlyAllThatComes()
    {
        // Were oxygen no limit, this heap would burn many times what its air can carry.
        Plant tight = Winter(new HeapBuild { PermeabilityM2 = 2e-11 });
        Plant open = Winter(new HeapBuild { PermeabilityM2 = 1e-9 });
        tight.Step(default, 20 * 86_400);
        open.Step(default, 20 * 86_400);
        HeapLedger sums = tight.Heap.Ledger;
        Assert.InRange(sums.OxygenTakenKg / sums.OxygenInKg, 0.85, 1);
        Assert.True(open.Heap.Ledger.OxygenTakenKg > 2 * sums.OxygenInKg);
    }

    [Fact]
    public void HeatMade_OverASeason_IsOneWithSolidsAndOxygen()
    {
        HeapLedger sums = Season.Of(PlantVariant.Shipped).Plant.Heap.Ledger;
        Assert.Equal(17.0e6 * sums.BurntKg, sums.GeneratedJ, 1e-9 * sums.GeneratedJ);

        // C6H10O5 + 6 O2: 192 kg of oxygen for 162 kg of solids.
        Assert.Equal(192.0 / 162 * sums.BurntKg, sums.OxygenTakenKg, 1e-9 * sums.OxygenTakenKg);

        // CMP-053: 14.0 MJ/kg of oxygen, 13.6 to 14.6 (from memory).
        Assert.InRange(sums.GeneratedJ / sums.OxygenTakenKg, 13.6e6, 14.6e6);
    }

    private static Plant Winter(HeapBuild heap)
    {
        PlantBuild build = PlantVariant.Holding(heap);
        WeatherSeries weather = Weathers.Of("New York");
        return new Plant(build, weather, Plant.Fresh(build, weather, Weathers.FirstOfNovember("New York", 2012)));
    }
}
