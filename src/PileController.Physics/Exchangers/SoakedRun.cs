namespace PileController.Physics.Exchangers;

/// <summary>A stream running through surroundings of one temperature: a pipe in a heap, a line outdoors, a duct in a bed.</summary>
public static class SoakedRun
{
    /// <summary>Temperature at the end of the run, °C: the surroundings' own when nothing flows (and there is any conductance).</summary>
    /// <param name="inletC">Stream at the inlet, °C.</param>
    /// <param name="surroundingsC">Surroundings, °C.</param>
    /// <param name="conductanceWPerK">Conductance of the whole run, W/K, 0 or more.</param>
    /// <param name="capacityRateWPerK">Heat-capacity rate of the stream (mass flow × specific heat), W/K, 0 or more.</param>
    public static double OutletC(double inletC, double surroundingsC, double conductanceWPerK, double capacityRateWPerK)
    {
        Require.NotNegative(conductanceWPerK, "W/K");
        Require.NotNegative(capacityRateWPerK, "W/K");
        return conductanceWPerK == 0
            ? inletC
            : inletC + ((surroundingsC - inletC) * Effectiveness.OneSideIsothermal(conductanceWPerK / capacityRateWPerK));
    }

    /// <summary>Heat the stream takes up over the run, W (negative: gives off); 0 when nothing flows.</summary>
    /// <param name="inletC">Stream at the inlet, °C.</param>
    /// <param name="surroundingsC">Surroundings, °C.</param>
    /// <param name="conductanceWPerK">Conductance of the whole run, W/K, 0 or more.</param>
    /// <param name="capacityRateWPerK">Heat-capacity rate of the stream, W/K, 0 or more.</param>
    public static double HeatWatts(double inletC, double surroundingsC, double conductanceWPerK, double capacityRateWPerK) =>
        capacityRateWPerK * (OutletC(inletC, surroundingsC, conductanceWPerK, capacityRateWPerK) - inletC);
}
