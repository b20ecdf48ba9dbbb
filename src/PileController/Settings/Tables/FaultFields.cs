using PileController.Control.Readings;
using PileController.Rigs.Faults;
using PileController.Settings.Fields;
using static PileController.Settings.Kinds.Kind;

namespace PileController.Settings.Tables;

/// <summary>One item of "rig.faults".</summary>
internal static class FaultFields
{
    /// <summary>What an item starts as before its kind is read.</summary>
    public static readonly Fault Blank = new(FaultKind.Open);

    public static readonly FieldTable<Fault> Table = new()
    {
        { "kind", WordOf<FaultKind>(), f => f.Kind, (f, v) => f with { Kind = v }, "What goes wrong.", true },
        { "channel", Word<Channel?>([.. ChannelTable.All.Select(c => (c.Name, (Channel?)c.Channel))]), f => f.Channel, (f, v) => f with { Channel = v }, "Which probe, for the faults of a single probe." },
        { "size", Number(-FaultRules.LargestSize, FaultRules.LargestSize, "of the channel's unit an hour (drift), of its unit (spike), °C (takenOut) or of the flow (blockedLine)"), f => f.Size, (f, v) => f with { Size = v }, "How bad." },
    };
}
