using PileController.Control.Readings;

namespace PileController.Rigs;

/// <summary>Which channels are temperatures, and which are plain switches.</summary>
internal static class ChannelKinds
{
    private static readonly bool[] Thermometers = [.. ChannelTable.All.Select(info => info.Unit == "°C")];

    private static readonly bool[] Switches = [.. ChannelTable.All.Select(info => info.Unit.Length == 0)];

    /// <summary>True for a temperature.</summary>
    public static bool IsThermometer(Channel channel) => Thermometers[(int)channel];

    /// <summary>True for a switch that says 1 while all is well; a leak switch says 0 then.</summary>
    public static bool IsWellWhenOne(Channel channel) => channel != Channel.Leak;

    /// <summary>True for a channel that is 0 or 1.</summary>
    public static bool IsSwitch(Channel channel) => Switches[(int)channel];
}
