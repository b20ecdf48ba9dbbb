namespace PileController.Physics.Heaps;

/// <summary>
/// Everything that entered, left or was made, each summed from its own flux; nothing here is found by difference.
/// Energies J, masses kg. What leaves is positive in the losses and draws.
/// </summary>
public record struct HeapLedger
{
    /// <summary>Heat made by microbes.</summary>
    public double GeneratedJ { get; set; }

    /// <summary>Lost through the side.</summary>
    public double SideJ { get; set; }

    /// <summary>Lost through the top.</summary>
    public double TopJ { get; set; }

    /// <summary>Lost into the ground.</summary>
    public double GroundJ { get; set; }

    /// <summary>Enthalpy of the air and vapour that came in by draught.</summary>
    public double AirInJ { get; set; }

    /// <summary>Enthalpy of the gas and vapour that left by draught.</summary>
    public double AirOutJ { get; set; }

    /// <summary>Taken by the water in the coil.</summary>
    public double CoilJ { get; set; }

    /// <summary>Taken by the water through the drum.</summary>
    public double DrumJ { get; set; }

    /// <summary>Taken by the air in the closed ducts.</summary>
    public double DuctJ { get; set; }

    /// <summary>Taken by air drawn through the heap by the blower, less what it brought in.</summary>
    public double ThroughAirJ { get; set; }

    /// <summary>Solids burnt.</summary>
    public double BurntKg { get; set; }

    /// <summary>Oxygen carried in.</summary>
    public double OxygenInKg { get; set; }

    /// <summary>Oxygen taken.</summary>
    public double OxygenTakenKg { get; set; }

    /// <summary>Water made by burning.</summary>
    public double WaterMadeKg { get; set; }

    /// <summary>Vapour carried in.</summary>
    public double VapourInKg { get; set; }

    /// <summary>Vapour carried out.</summary>
    public double VapourOutKg { get; set; }

    /// <summary>Heat taken on purpose.</summary>
    public readonly double DrawnJ => CoilJ + DrumJ + DuctJ + ThroughAirJ;

    /// <summary>Heat lost.</summary>
    public readonly double LostJ => SideJ + TopJ + GroundJ + AirOutJ - AirInJ;
}
