namespace PileController.Physics.Exchangers;

/// <summary>A body of one temperature (tank, drum, still water in a line) that loses heat to surroundings.</summary>
/// <param name="CapacityJPerK">Heat capacity, J/K.</param>
/// <param name="LossWPerK">Conductance to the surroundings, W/K.</param>
public readonly record struct LumpedTank(double CapacityJPerK, double LossWPerK)
{
    /// <summary>Time in which the difference to the surroundings falls to 1/e, s.</summary>
    public double TimeConstantSeconds => CapacityJPerK / LossWPerK;

    /// <summary>Temperature after a time with constant surroundings and heat put in, °C: exact, whatever the length of the step.</summary>
    /// <param name="startC">Temperature at the start, °C.</param>
    /// <param name="surroundingsC">Surroundings, °C.</param>
    /// <param name="seconds">Time, s, 0 or more.</param>
    /// <param name="heatWatts">Heat put in all the while, W.</param>
    public double After(double startC, double surroundingsC, double seconds, double heatWatts = 0)
    {
        Require.NotNegative(seconds, "s");
        if (LossWPerK == 0)
        {
            return startC + (heatWatts * seconds / CapacityJPerK);
        }

        double settledC = surroundingsC + (heatWatts / LossWPerK);
        return startC - ((startC - settledC) * Effectiveness.OneSideIsothermal(seconds / TimeConstantSeconds));
    }

    /// <summary>Time until it reaches a temperature by itself, s; infinity when it never does, 0 when it is there.</summary>
    /// <param name="startC">Temperature at the start, °C.</param>
    /// <param name="goalC">Temperature to reach, °C.</param>
    /// <param name="surroundingsC">Surroundings, °C.</param>
    public double SecondsToReach(double startC, double goalC, double surroundingsC)
    {
        if (startC == goalC)
        {
            return 0;
        }

        double share = (startC - surroundingsC) / (goalC - surroundingsC);
        return share > 1 && double.IsFinite(share) ? TimeConstantSeconds * Portable.Log(share) : double.PositiveInfinity;
    }
}
