namespace PileController.Units;

/// <summary>The units people are shown.</summary>
public enum UnitSystem
{
    /// <summary>°C, W, L/min, m.</summary>
    Metric = 0,

    /// <summary>°F, BTU/h, gal/min, ft.</summary>
    Us,
}
