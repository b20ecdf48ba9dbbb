namespace PileController.Units;

/// <summary>What kind of thing a quantity measures.</summary>
public enum Dimension
{
    /// <summary>A point on a temperature scale.</summary>
    Temperature = 0,

    /// <summary>A difference of two temperatures.</summary>
    TemperatureDifference,

    /// <summary>A length.</summary>
    Length,

    /// <summary>An area; also the permeability of a porous body.</summary>
    Area,

    /// <summary>A volume.</summary>
    Volume,

    /// <summary>A mass.</summary>
    Mass,

    /// <summary>A length of time.</summary>
    Time,

    /// <summary>A volume flow of water or air.</summary>
    Flow,

    /// <summary>A power or heat flow.</summary>
    Power,

    /// <summary>An energy.</summary>
    Energy,

    /// <summary>Heat per kelvin held by a body.</summary>
    HeatCapacity,

    /// <summary>Heat per mass and kelvin.</summary>
    SpecificHeat,

    /// <summary>Heat per area and kelvin held by a surface.</summary>
    AreaHeatCapacity,

    /// <summary>Heat flow per kelvin.</summary>
    Conductance,

    /// <summary>Heat flow per length and kelvin; a conductivity or the loss of a line.</summary>
    Conductivity,

    /// <summary>Heat flow per area and kelvin.</summary>
    Transmittance,

    /// <summary>A pressure.</summary>
    Pressure,

    /// <summary>An electric tension.</summary>
    Voltage,

    /// <summary>An electric current.</summary>
    Current,

    /// <summary>So many times in a time.</summary>
    Rate,

    /// <summary>Pulses per volume.</summary>
    PulsesPerVolume,

    /// <summary>A share of a whole.</summary>
    Share,

    /// <summary>Mass per volume.</summary>
    Density,

    /// <summary>A speed, of wind or air.</summary>
    Speed,

    /// <summary>An electric resistance.</summary>
    Resistance,

    /// <summary>A small share of a gas in air, by volume; parts per million.</summary>
    GasShare,
}
