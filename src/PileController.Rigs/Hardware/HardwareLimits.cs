using PileController.Rigs.Hardware.Ports;

namespace PileController.Rigs.Hardware;

/// <summary>What the devices of the real rig can do, for whoever checks settings.</summary>
public static class HardwareLimits
{
    /// <summary>Lowest frequency of the PWM chip on the I2C bus, Hz.</summary>
    public const double LeastI2cPwmHertz = Pca9685.LeastHertz;

    /// <summary>Highest frequency of the PWM chip on the I2C bus, Hz.</summary>
    public const double MostI2cPwmHertz = Pca9685.MostHertz;

    /// <summary>Channels of the PWM chip on the I2C bus.</summary>
    public const int I2cPwmChannels = Pca9685.Channels;
}
