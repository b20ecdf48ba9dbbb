namespace PileController.Physics.Plants;

/// <summary>Sums of the loop's fluxes, J, each on its own.</summary>
public record struct LoopLedger
{
    /// <summary>From the bed through the coil.</summary>
    public double CoilJ { get; set; }

    /// <summary>From the drum.</summary>
    public double DrumJ { get; set; }

    /// <summary>Given to the house by the pipe.</summary>
    public double PipeJ { get; set; }

    /// <summary>Given to the house by the tank.</summary>
    public double TankJ { get; set; }

    /// <summary>Lost from the lines to the outside.</summary>
    public double LineJ { get; set; }
}
