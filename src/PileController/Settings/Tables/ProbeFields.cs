using System.Text.RegularExpressions;
using PileController.Control.Readings;
using PileController.Rigs;
using PileController.Settings.Fields;
using static PileController.Settings.Kinds.Kind;

namespace PileController.Settings.Tables;

/// <summary>One item of "rig.probes".</summary>
internal static partial class ProbeFields
{
    /// <summary>What an item starts as before its channel is read.</summary>
    public static readonly ProbeFit Blank = new(Channel.HeapCore);

    public static readonly FieldTable<ProbeFit> Table = Wired(new()
    {
        { "channel", Word([.. ChannelTable.All.Select(c => (c.Name, c.Channel))]), p => p.Channel, (p, v) => p with { Channel = v }, "What the probe tells.", true },
        { "radius", Metres(0, 6), p => p.RadiusM, (p, v) => p with { RadiusM = v }, "Distance from the heap's axis; heap probes only." },
        { "height", Metres(0, 4.5), p => p.HeightM, (p, v) => p with { HeightM = v }, "Height above the heap's base; heap probes only." },
        { "address", OptionalText("a 1-Wire address, \"28-\" and twelve digits 0-9 or a-f", a => OneWireAddress().IsMatch(a)), p => p.Address, (p, v) => p with { Address = v }, "1-Wire address on the real rig." },
        { "label", OptionalText("a letter or digit, and at most 31 more letters, digits, spaces or .,()/+-", l => Label().IsMatch(l)), p => p.Label, (p, v) => p with { Label = v }, "What you call the place of a spare thermometer." },
        { "offset", Kelvin(-5, 5), p => p.OffsetKelvin, (p, v) => p with { OffsetKelvin = v }, "Calibration of a thermometer: added to what the probe says." },
    });

    /// <summary>What need not be written of a probe: the place of a heap probe always must be.</summary>
    public static ProbeFit Understood(ProbeFit probe) =>
        IsInHeap(probe.Channel) ? Blank with { RadiusM = -1, HeightM = -1 } : Blank;

    /// <summary>Whether a channel is measured inside the heap.</summary>
    public static bool IsInHeap(Channel channel) =>
        channel is Channel.HeapCore or Channel.HeapMiddle or Channel.HeapTurns or Channel.HeapEdge;

    /// <summary>Whether a channel is a thermometer at a place of the grower's own, which may have a name.</summary>
    public static bool IsSpare(Channel channel) => channel is >= Channel.SpareOne and <= Channel.SpareFour;

    private static FieldTable<ProbeFit> Wired(FieldTable<ProbeFit> table)
    {
        WiringFields.AddTo(table);
        return table.LaterAre("label");
    }

    [GeneratedRegex("^28-[0-9a-f]{12}\\z")]
    private static partial Regex OneWireAddress();

    // Nothing that means something to a page, a table or a message.
    [GeneratedRegex("^[\\p{L}\\p{Nd}][\\p{L}\\p{Nd} .,()/+-]{0,31}\\z")]
    private static partial Regex Label();
}
