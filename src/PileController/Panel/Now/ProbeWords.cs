using PileController.Control.Readings;

namespace PileController.Panel.Now;

/// <summary>What people call a probe, and what is wrong with one.</summary>
internal static class ProbeWords
{
    /// <summary>What people call it.</summary>
    public static string Label(Channel channel) => channel switch
    {
        Channel.HeapCore => "Heap core",
        Channel.HeapMiddle => "Heap middle",
        Channel.HeapTurns => "Heap at the turns",
        Channel.HeapEdge => "Heap edge",
        Channel.Supply => "Supply",
        Channel.Return => "Return",
        Channel.House => "House air",
        Channel.Floor => "House floor",
        Channel.Tank => "Overflow tank",
        Channel.Outside => "Outside",
        Channel.DuctAir => "Duct air",
        Channel.Sun => "Sunshine",
        Channel.Flow => "Loop flow",
        Channel.PumpPower => "Pump power",
        Channel.BlowerPower => "Blower power",
        Channel.Battery => "Battery",
        Channel.Leak => "Leak switch",
        Channel.Level => "Tank level",
        _ => channel.ToString(),
    };

    /// <summary>How far a reading may be believed, in words.</summary>
    public static string Quality(ReadingQuality quality) => quality switch
    {
        ReadingQuality.NotFitted => "not fitted",
        ReadingQuality.Good => "good",
        ReadingQuality.NoAnswer => "does not answer",
        ReadingQuality.BadChecksum => "garbled on the way",
        ReadingQuality.Shorted => "bus shorted",
        ReadingQuality.PowerOnValue => "power-on value, not measured",
        ReadingQuality.Late => "late",
        ReadingQuality.OutOfRange => "out of range",
        ReadingQuality.TooFast => "moves too fast to be true",
        ReadingQuality.Stuck => "stuck",
        ReadingQuality.Disagrees => "disagrees with its neighbours",
        ReadingQuality.Stale => "too old",
        _ => quality.ToString(),
    };
}
