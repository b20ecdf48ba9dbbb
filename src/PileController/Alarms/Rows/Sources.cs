using PileController.Control.Readings;

namespace PileController.Alarms.Rows;

/// <summary>Keys that several rows name, and what their probes are.</summary>
internal static class Sources
{
    public const string Rig = "rigSilent";
    public const string Bus = "probeBus";
    public const string HeapBlind = "heapBlind";
    public const string HouseBlind = "houseBlind";

    /// <summary>Key of the alarm of one probe.</summary>
    public static string Probe(Channel channel) => channel == Channel.House ? HouseBlind : $"probe.{ChannelTable.Of(channel).Name}";

    /// <summary>Whether a probe hangs on the bus of the thermometers.</summary>
    public static bool OnBus(Channel channel) => ChannelTable.Of(channel).Unit == "°C";

    /// <summary>Whether a probe sits in the heap.</summary>
    public static bool InHeap(Channel channel) => channel <= Channel.HeapEdge;
}
