namespace PileController.Rigs;

/// <summary>What drives a pump or blower.</summary>
public enum LoadDrive
{
    /// <summary>One line, on or off.</summary>
    Line = 0,

    /// <summary>A channel of a PWM chip of the board.</summary>
    Pwm,

    /// <summary>A channel of the PWM chip on the I2C bus.</summary>
    I2cPwm,
}

/// <summary>How one load of the real rig is driven. Its line is given beside it; with PWM that is a relay in series.</summary>
public sealed record LoadSettings
{
    /// <summary>What drives it.</summary>
    public LoadDrive Drive { get; init; }

    /// <summary>Channel of the PWM chip, from 0; null when it is driven by its line.</summary>
    public int? Channel { get; init; }

    /// <summary>Frequency of the board's PWM, Hz (above 0). The chip on the I2C bus has one frequency for all its channels.</summary>
    public double FrequencyHz { get; init; } = 1000;

    /// <summary>Signal at which it just turns, 0 to below <see cref="Most"/>.</summary>
    public double Least { get; init; }

    /// <summary>Signal at full duty, above <see cref="Least"/> and at most 1.</summary>
    public double Most { get; init; } = 1;

    /// <summary>True when a full signal stops it.</summary>
    public bool Inverted { get; init; }
}

/// <summary>The PWM chip on the I2C bus (registers of a PCA9685).</summary>
public sealed record I2cPwmSettings
{
    /// <summary>Number of the bus, as in /dev/i2c-1.</summary>
    public int Bus { get; init; } = 1;

    /// <summary>Address on the bus, 0x40 to 0x77.</summary>
    public int Address { get; init; } = 0x40;

    /// <summary>Frequency of all its channels, Hz (24 to 1526).</summary>
    public double FrequencyHz { get; init; } = 1000;
}
