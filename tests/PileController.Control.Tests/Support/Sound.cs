using PileController.Control.Readings;

namespace PileController.Control.Tests.Support;

/// <summary>Readings of a rig with nothing wrong, on a cold night; no probe for what came after the first channels.</summary>
internal static class Sound
{
    private static readonly (Channel Channel, double Value)[] Values =
    [
        (Channel.HeapCore, 60), (Channel.HeapMiddle, 58), (Channel.HeapTurns, 55), (Channel.HeapEdge, 40), (Channel.Supply, 50),
        (Channel.Return, 35), (Channel.House, 4), (Channel.Floor, 8), (Channel.Tank, 20), (Channel.Outside, -5),
        (Channel.DuctAir, 30), (Channel.Sun, 0), (Channel.Flow, 0), (Channel.PumpPower, 0), (Channel.BlowerPower, 0),
        (Channel.Battery, 12.8), (Channel.Leak, 0), (Channel.Level, 1),
    ];

    public static RigReadings Readings { get; } =
        Values.Aggregate(RigReadings.None, (all, v) => all.With(v.Channel, v.Value));

    public static RigReadings With(this RigReadings readings, Channel channel, double value) =>
        readings.With(channel, Reading.FromValue(channel, value));

    public static RigReadings Doubted(this RigReadings readings, Channel channel, ReadingQuality quality) =>
        readings.With(channel, readings[channel] with { Quality = quality });

    public static RigReadings Without(this RigReadings readings, params Channel[] channels) =>
        channels.Aggregate(readings, (left, channel) => left.With(channel, Reading.NotFitted));
}
