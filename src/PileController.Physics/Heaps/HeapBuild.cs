namespace PileController.Physics.Heaps;

/// <summary>A heap as it is built: size, material, what is buried in it and what covers it. Defaults are Alder Bank's.</summary>
public sealed record HeapBuild
{
    /// <summary>Radius of the upright round body, m (0.5 to 6).</summary>
    public double RadiusM { get; init; } = 1.9;

    /// <summary>Height, m (0.5 to 4.5).</summary>
    public double HeightM { get; init; } = 2.0;

    /// <summary>Mass as built, water included, kg (500 to 200 000).</summary>
    public double WetMassKg { get; init; } = 9000;

    /// <summary>Share of that mass that is water, 0.2 to 0.8.</summary>
    public double MoistureFraction { get; init; } = 0.55;

    /// <summary>Share of the dry mass that microbes take quickly (greens, manure, sugars), 0 to 0.5.</summary>
    public double FastFraction { get; init; } = 0.06;

    /// <summary>Share of the dry mass that microbes take slowly within a season (cellulose they can reach), 0 to 0.8.</summary>
    public double SlowFraction { get; init; } = 0.45;

    /// <summary>Temperature of the material at building, °C (-5 to 60).</summary>
    public double BuildTemperatureC { get; init; } = 10;

    /// <summary>Permeability of the settled body to air, m² (1e-11 to 1e-6).</summary>
    public double PermeabilityM2 { get; init; } = 1.0e-9;

    /// <summary>How many times more air the loose body lets through when just built, 1 to 10 (common practice, no source: a heap settles by a fifth within weeks).</summary>
    public double FreshPermeabilityRatio { get; init; } = 1.6;

    /// <summary>Thickness of the dry blanket of chips or straw over top and side, m (0 to 1).</summary>
    public double CoverThicknessM { get; init; } = 0.15;

    /// <summary>Number of radial shells the model cuts the body into, 4 to 60.</summary>
    public int Shells { get; init; } = 14;

    /// <summary>The coil turns, or a length of 0 for none.</summary>
    public CoilBuild Coil { get; init; } = new();

    /// <summary>Water held by the buried drum, L (0 for none, at most 2000).</summary>
    public double DrumLitres { get; init; } = 208.2;

    /// <summary>The metal ducts, or a length of 0 for none.</summary>
    public DuctBuild Duct { get; init; } = new();
}

/// <summary>The pipe turns round the drum.</summary>
public sealed record CoilBuild
{
    /// <summary>Radius at which the turns lie, m.</summary>
    public double RadiusM { get; init; } = 1.0;

    /// <summary>Length of buried pipe, m (0 to 1000).</summary>
    public double LengthM { get; init; } = 120;

    /// <summary>Outside diameter of the pipe, m.</summary>
    public double OuterDiameterM { get; init; } = 0.015875;

    /// <summary>Inside diameter of the pipe, m.</summary>
    public double InnerDiameterM { get; init; } = 0.012065;
}

/// <summary>The closed metal ducts in the heap.</summary>
public sealed record DuctBuild
{
    /// <summary>Radius at which the ducts lie, m.</summary>
    public double RadiusM { get; init; } = 0.6;

    /// <summary>Length of buried duct, m (0 to 200).</summary>
    public double LengthM { get; init; } = 12;

    /// <summary>Diameter, m (0.05 to 0.5).</summary>
    public double DiameterM { get; init; } = 0.15;

    /// <summary>Air moved at full blower duty, m³/s (0 to 2).</summary>
    public double FullFlowM3PerS { get; init; } = 0.04;

    /// <summary>
    /// False: a closed duct, which carries sensible heat only. True: the blower draws air through the heap itself;
    /// it leaves near saturation, takes water with it and may carry carbon dioxide, ammonia and spores.
    /// </summary>
    public bool ThroughHeap { get; init; }

    /// <summary>Electric power of the blower at full duty, W.</summary>
    public double BlowerWatts { get; init; } = 18;
}
