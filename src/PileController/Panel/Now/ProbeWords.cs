using PileController.Control.Readings;
using PileController.Rigs;

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
        Channel.Humidity => "House humidity",
        Channel.CarbonDioxide => "House carbon dioxide",
        Channel.SpareOne => "Spare thermometer 1",
        Channel.SpareTwo => "Spare thermometer 2",
        Channel.SpareThree => "Spare thermometer 3",
        Channel.SpareFour => "Spare thermometer 4",
        _ => channel.ToString(),
    };

    /// <summary>What people call it at a place: by the grower's own name where it has one.</summary>
    /// <param name="probes">What is fitted.</param>
    /// <param name="channel">Which.</param>
    public static string Label(IReadOnlyList<ProbeFit> probes, Channel channel) =>
        probes.FirstOrDefault(probe => probe.Channel == channel)?.Label ?? Label(channel);

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
