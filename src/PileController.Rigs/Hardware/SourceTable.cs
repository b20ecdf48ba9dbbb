using PileController.Control.Readings;

namespace PileController.Rigs.Hardware;

/// <summary>What each way of reading can tell, and where its devices can be.</summary>
public static class SourceTable
{
    /// <summary>The word for a source in the settings.</summary>
    public static string Word(ProbeSource source)
    {
        string name = source.ToString();
        return char.ToLowerInvariant(name[0]) + name[1..];
    }

    /// <summary>The sources that can tell a channel; none for one that no adapter reads.</summary>
    public static ProbeSource[] For(Channel channel) => channel switch
    {
        Channel.House or Channel.Outside or Channel.DuctAir => [ProbeSource.OneWire, ProbeSource.Ads1115, ProbeSource.Sht4x],
        Channel.Humidity => [ProbeSource.Sht4x],
        Channel.CarbonDioxide => [ProbeSource.Scd4x],
        Channel.Flow => [ProbeSource.Pulses],
        Channel.PumpPower or Channel.BlowerPower or Channel.Battery => [ProbeSource.Ina219],
        _ when ChannelKinds.IsThermometer(channel) => [ProbeSource.OneWire, ProbeSource.Ads1115],
        _ when ChannelKinds.IsSwitch(channel) => [ProbeSource.Switch],
        _ => [],
    };

    /// <summary>Whether its devices hang on an I2C bus.</summary>
    internal static bool IsOnI2c(ProbeSource? source) => source is { } one && Addresses(one) is not null;

    /// <summary>First and last address a device can have (data sheets, from memory); null off the I2C bus.</summary>
    internal static (int Least, int Most)? Addresses(ProbeSource source) => source switch
    {
        ProbeSource.Ads1115 => (0x48, 0x4B),
        ProbeSource.Sht4x => (0x44, 0x46),
        ProbeSource.Scd4x => (0x62, 0x62),
        ProbeSource.Ina219 => (0x40, 0x4F),
        _ => null,
    };
}
