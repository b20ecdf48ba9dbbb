namespace PileController.Physics.Plants;

/// <summary>Temperatures of the house, °C.</summary>
/// <param name="AirC">Air, plants and benches.</param>
/// <param name="FloorC">The soil that follows the day.</param>
public sealed record DwellingState(double AirC, double FloorC);

/// <summary>Sums of the house's fluxes, J, each on its own.</summary>
public record struct DwellingLedger
{
    /// <summary>Sun.</summary>
    public double SunJ { get; set; }

    /// <summary>Heat put in: pipe, tank, ducts, backup.</summary>
    public double HeatJ { get; set; }

    /// <summary>Lost through glazing and leaks.</summary>
    public double LossJ { get; set; }

    /// <summary>Lost through open vents.</summary>
    public double VentJ { get; set; }

    /// <summary>Lost to the deep ground.</summary>
    public double GroundJ { get; set; }
}
