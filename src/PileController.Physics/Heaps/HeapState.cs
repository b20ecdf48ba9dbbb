namespace PileController.Physics.Heaps;

/// <summary>All a heap remembers, so that it can be stored and taken up again to the same bits.</summary>
public sealed record HeapState
{
    /// <summary>Enthalpy of each cell above 0 °C, J: shells from the middle out, then the sleeve round the pipe from the pipe out.</summary>
    public required double[] EnthalpyJ { get; init; }

    /// <summary>Solids that burn fast, kg a cell.</summary>
    public required double[] FastKg { get; init; }

    /// <summary>Solids that burn slowly, kg a cell.</summary>
    public required double[] SlowKg { get; init; }

    /// <summary>Solids that do not burn within a season, kg a cell.</summary>
    public required double[] InertKg { get; init; }

    /// <summary>Water, kg a cell.</summary>
    public required double[] WaterKg { get; init; }

    /// <summary>Time since the heap was built, s.</summary>
    public double AgeSeconds { get; init; }

    /// <summary>Temperature of the water in the drum, °C.</summary>
    public required double DrumC { get; init; }

    /// <summary>Heat that left by the air drawn through in the last slow step, W.</summary>
    public double ThroughAirW { get; init; }

    /// <summary>The sums so far.</summary>
    public required HeapLedger Ledger { get; init; }
}
