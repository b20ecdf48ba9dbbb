namespace PileController.FarSide.Kernel;

/// <summary>Where the devices' wires end, on the side that is not the controller's.</summary>
/// <param name="GpioConfig">Folder in which the GPIO chip was made.</param>
/// <param name="PwmState">File with the channels of the board's PWM.</param>
/// <param name="I2cRegisters">File with the registers of the chips on the I2C bus.</param>
/// <param name="ProbeMilliC">File with the temperature of each probe on the wire.</param>
internal sealed record Places(string GpioConfig, string PwmState, string I2cRegisters, string ProbeMilliC)
{
    /// <summary>As tests/hil makes them.</summary>
    public static Places Trial { get; } = new(
        "/sys/kernel/config/gpio-sim/rig", "/sys/module/pwm_sim/parameters/state", "/sys/module/i2c_sim/parameters/get",
        "/sys/module/w1_sim/parameters/milli_c");
}
