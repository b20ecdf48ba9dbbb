namespace PileController.Physics.Exchangers;

/// <summary>Share of the greatest possible heat that an exchanger passes, from its number of transfer units.</summary>
public static class Effectiveness
{
    /// <summary>One side so large that it keeps its temperature (a heap round a pipe): 1 − exp(−NTU).</summary>
    /// <param name="transferUnits">UA over the heat-capacity rate of the stream, 0 to infinity.</param>
    public static double OneSideIsothermal(double transferUnits)
    {
        Require.NotNegative(transferUnits, "(transfer units)");
        return -Portable.ExpMinusOne(-transferUnits);
    }

    /// <summary>Counterflow.</summary>
    /// <param name="transferUnits">UA over the smaller heat-capacity rate, 0 to infinity.</param>
    /// <param name="capacityRatio">Smaller over larger heat-capacity rate, 0 to 1.</param>
    public static double Counterflow(double transferUnits, double capacityRatio)
    {
        Require.NotNegative(transferUnits, "(transfer units)");
        Require.Within(capacityRatio, 0, 1, "(ratio)");
        double spare = 1 - capacityRatio;
        if (double.IsPositiveInfinity(transferUnits))
        {
            return 1;
        }

        if (spare * transferUnits < 1e-9)
        {
            return transferUnits / (1 + transferUnits); // the limit of equal capacity rates, where the formula below is 0/0
        }

        double gap = -Portable.ExpMinusOne(-transferUnits * spare);
        return gap / (spare + (capacityRatio * gap));
    }

    /// <summary>Both streams the same way.</summary>
    /// <param name="transferUnits">UA over the smaller heat-capacity rate, 0 to infinity.</param>
    /// <param name="capacityRatio">Smaller over larger heat-capacity rate, 0 to 1.</param>
    public static double ParallelFlow(double transferUnits, double capacityRatio)
    {
        Require.Within(capacityRatio, 0, 1, "(ratio)");
        return OneSideIsothermal(transferUnits * (1 + capacityRatio)) / (1 + capacityRatio);
    }
}
