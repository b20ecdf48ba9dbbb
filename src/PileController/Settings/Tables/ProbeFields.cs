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
        { "offset", Kelvin(-5, 5), p => p.OffsetKelvin, (p, v) => p with { OffsetKelvin = v }, "Calibration of a thermometer: added to what the probe says." },
    });

    /// <summary>What need not be written of a probe: the place of a heap probe always must be.</summary>
    public static ProbeFit Understood(ProbeFit probe) =>
        IsInHeap(probe.Channel) ? Blank with { RadiusM = -1, HeightM = -1 } : Blank;

    /// <summary>Whether a channel is measured inside the heap.</summary>
    public static bool IsInHeap(Channel channel) =>
        channel is Channel.HeapCore or Channel.HeapMiddle or Channel.HeapTurns or Channel.HeapEdge;

    private static FieldTable<ProbeFit> Wired(FieldTable<ProbeFit> table)
    {
        WiringFields.AddTo(table);
        return table;
    }

    [GeneratedRegex("^28-[0-9a-f]{12}\\z")]
    private static partial Regex OneWireAddress();
}
