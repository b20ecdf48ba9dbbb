namespace PileController.Plans.Money;

/// <summary>What the grower pays, in money of his own. Defaults are made up for the demo.</summary>
public sealed record Prices
{
    /// <summary>Name or sign of the money, for the eye only.</summary>
    public string Money { get; init; } = "$";

    /// <summary>Fuel that heats the house where the heap does not; the payback is reckoned against it.</summary>
    public ReplacedFuel Replaced { get; init; }

    /// <summary>Propane, a US gallon.</summary>
    public double PropanePerGallon { get; init; } = 2.8;

    /// <summary>Heating oil, a US gallon.</summary>
    public double OilPerGallon { get; init; } = 3.8;

    /// <summary>Electricity, a kWh; pump and blower pay it too.</summary>
    public double ElectricityPerKWh { get; init; } = 0.17;

    /// <summary>Firewood, a cord.</summary>
    public double CordwoodPerCord { get; init; } = 320;

    /// <summary>Chips and greens for one heap, delivered; paid every season.</summary>
    public double ChipsPerHeap { get; init; }
}

/// <summary>The fuel that a heap saves.</summary>
public enum ReplacedFuel
{
    /// <summary>Propane.</summary>
    Propane = 0,

    /// <summary>Heating oil.</summary>
    Oil,

    /// <summary>Electricity.</summary>
    Electricity,

    /// <summary>Firewood.</summary>
    Cordwood,
}
