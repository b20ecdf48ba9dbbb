using PileController.Control;
using PileController.Control.Estimation;
using PileController.Control.Foresight;

namespace PileController.Ledgers;

/// <summary>
/// What the estimator learned of heap and house in a season: factors on what the settings told. They are offered to the next
/// plan and never applied by themselves. Those of the heap are null when its observer never began.
/// </summary>
/// <param name="HeapCapacity">On the heap's heat capacity.</param>
/// <param name="HeapLoss">On what the cover lets through.</param>
/// <param name="Coil">On the conductance from bed to water.</param>
/// <param name="HouseLoss">On the loss of the house; null when no hour taught anything.</param>
/// <param name="HouseHours">From how many hours the house was learned.</param>
/// <param name="ToldHeapJPerK">The heat capacity told, J/K.</param>
/// <param name="ToldCoilWPerK">The conductance told, W/K.</param>
/// <param name="ToldHouseLossWPerK">The loss of the house told, W/K.</param>
/// <param name="Fading">When the heap faded.</param>
internal sealed record Lessons(
    LearnedFactor? HeapCapacity, LearnedFactor? HeapLoss, LearnedFactor? Coil, double? HouseLoss, int HouseHours,
    double ToldHeapJPerK, double ToldCoilWPerK, double ToldHouseLossWPerK, Fading Fading)
{
    private const int Cover = 3;
    private const int Capacity = 4;
    private const int CoilFigure = 5;

    /// <summary>What a memory and the days of a season teach.</summary>
    public static Lessons Of(Memory memory, ControlSettings told, IReadOnlyList<DayEntry> days)
    {
        HeapBelief? belief = memory.Estimator.Belief is { Fits: true } fits ? fits : null;
        HouseLearned house = memory.House.Learned;
        return new Lessons(
            Factor(belief, Capacity), Factor(belief, Cover), Factor(belief, CoilFigure), house.Hours > 0 ? house.LossFactor : null,
            house.Hours, told.HeapHeatCapacityJPerK, told.CoilWPerK, told.HouseLossWPerK, Fading.Of(days));
    }

    // The belief holds logarithms and the upper triangle of their covariance, row by row.
    private static LearnedFactor? Factor(HeapBelief? belief, int figure)
    {
        if (belief is null)
        {
            return null;
        }

        int row = HeapBelief.FirstFigure + figure;
        double variance = belief.Upper[(row * HeapBelief.Size) - (row * (row - 1) / 2)];
        return new LearnedFactor(Math.Exp(belief.Mean[row]), Math.Exp(Math.Sqrt(Math.Max(0, variance))));
    }
}

/// <summary>A factor and how sure it is.</summary>
/// <param name="Factor">On the figure told.</param>
/// <param name="Spread">One standard deviation, as a factor above and below: 1 is certain.</param>
internal sealed record LearnedFactor(double Factor, double Spread);
