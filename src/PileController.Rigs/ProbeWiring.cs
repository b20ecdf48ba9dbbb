namespace PileController.Rigs;

/// <summary>How a real rig reads a probe.</summary>
public enum ProbeSource
{
    /// <summary>A digital thermometer on a 1-Wire bus, known by its address.</summary>
    OneWire = 0,

    /// <summary>A resistance thermometer in a divider, at an input of an I2C converter with the ADS1115's registers.</summary>
    Ads1115,

    /// <summary>An I2C air probe that speaks as the SHT4x do.</summary>
    Sht4x,

    /// <summary>An I2C carbon dioxide probe that speaks as the SCD4x do.</summary>
    Scd4x,

    /// <summary>An I2C current and voltage monitor over a shunt, with the INA219's registers.</summary>
    Ina219,

    /// <summary>Pulses counted on a line of the GPIO chip.</summary>
    Pulses,

    /// <summary>A switch on a line of the GPIO chip.</summary>
    Switch,
}

/// <summary>What kind of resistance thermometer stands in a divider.</summary>
public enum ResistorKind
{
    /// <summary>Platinum of 1000 Ω at 0 °C, IEC 60751.</summary>
    Pt1000 = 0,

    /// <summary>A thermistor, whose resistance falls as it warms.</summary>
    Ntc,
}

/// <summary>The level of a line.</summary>
public enum LineLevel
{
    /// <summary>Pulled to ground.</summary>
    Low = 0,

    /// <summary>Pulled to the supply.</summary>
    High,
}

/// <summary>Where a probe hangs on a real rig. What its source does not need is null.</summary>
public sealed record ProbeWiring
{
    /// <summary>Wired to nothing but its 1-Wire address, if it has one.</summary>
    public static ProbeWiring None { get; } = new();

    /// <summary>How it is read; null: by 1-Wire where it has an address, and else not at all.</summary>
    public ProbeSource? Source { get; init; }

    /// <summary>Number of the I2C bus.</summary>
    public int? Bus { get; init; }

    /// <summary>Address on the I2C bus, 7 bit.</summary>
    public int? Device { get; init; }

    /// <summary>Input of the converter, 0 to 3.</summary>
    public int? Input { get; init; }

    /// <summary>What stands between that input and ground.</summary>
    public ResistorKind? Sensor { get; init; }

    /// <summary>The resistor between excitation and input, Ω.</summary>
    public double? ReferenceOhms { get; init; }

    /// <summary>Voltage over the whole divider, V, where it is told; else it is measured at <see cref="ExcitationInput"/>.</summary>
    public double? ExcitationVolts { get; init; }

    /// <summary>Input of the same converter at which the voltage over the whole divider is measured, 0 to 3.</summary>
    public int? ExcitationInput { get; init; }

    /// <summary>The thermistor's resistance at 25 °C, Ω.</summary>
    public double? OhmsAt25C { get; init; }

    /// <summary>The thermistor's B value, K.</summary>
    public double? BetaKelvin { get; init; }

    /// <summary>The current monitor's shunt, Ω.</summary>
    public double? ShuntOhms { get; init; }

    /// <summary>Line of the GPIO chip.</summary>
    public int? Line { get; init; }

    /// <summary>The switch line's level while all is well: no leak, enough water.</summary>
    public LineLevel? WellWhen { get; init; }

    /// <summary>More pulses a second than this are bounce, 1/s; null for <see cref="UsualMostPulsesPerSecond"/>.</summary>
    public double? MostPulsesPerSecond { get; init; }

    /// <summary>The bound where none is given, 1/s: 27 L/min at 450 pulses a litre.</summary>
    public const double UsualMostPulsesPerSecond = 200;
}
