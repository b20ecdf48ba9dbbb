namespace PileController.Control.Metering;

/// <summary>What the water carries where a constant will do: in reach, models and inferred draw. The metered draw has its own property of water.</summary>
internal static class Carriers
{
    /// <summary>Heat capacity of loop water, J/(L·K): about that between 20 and 50 °C (from memory).</summary>
    public const double WaterJPerLK = 4170;
}
