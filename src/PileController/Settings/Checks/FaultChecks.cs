using PileController.Control.Readings;
using PileController.Rigs.Faults;
using PileController.Settings.Fields;

namespace PileController.Settings.Checks;

/// <summary>Faults put into the rig: each names a fitted probe or none, and has the size its kind needs.</summary>
internal static class FaultChecks
{
    private const string Faults = "rig.faults";

    public static readonly Check[] All =
    [
        new([Faults, "rig.probes"], (s, _) => s.Rig.Faults.SelectMany((f, i) => Channels(s, f, $"{Faults}[{i}]"))),
        new([Faults], (s, r) => s.Rig.Faults.SelectMany((f, i) => Sizes(f, $"{Faults}[{i}]", r))),
    ];

    private static bool IsOfOneProbe(FaultKind kind) =>
        kind is FaultKind.Open or FaultKind.Short or FaultKind.Stuck or FaultKind.Drift or FaultKind.Spike;

    private static IEnumerable<Finding> Channels(PileSettings settings, Fault fault, string path)
    {
        string? name = fault.Channel is Channel channel ? ChannelTable.Of(channel).Name : null;
        if (IsOfOneProbe(fault.Kind) && name is null)
        {
            yield return new Finding($"{path}.channel", "missing", "the channel of the probe that is to fail, for example \"heapCore\"");
        }
        else if (!IsOfOneProbe(fault.Kind) && name is not null)
        {
            yield return new Finding($"{path}.channel", $"\"{name}\"", "none: this kind of fault is not of a single probe");
        }
        else if (name is not null && settings.Rig.Probes.All(p => p.Channel != fault.Channel))
        {
            yield return new Finding($"{path}.channel", $"\"{name}\"", "a channel with a probe in rig.probes");
        }
    }

    private static IEnumerable<Finding> Sizes(Fault fault, string path, FileReading reading)
    {
        string given = reading.GivenAt($"{path}.size") ?? "missing";
        if (fault.Kind is FaultKind.Drift or FaultKind.Spike && fault.Size == 0)
        {
            yield return new Finding($"{path}.size", given, "a number other than 0 for drift and spike");
        }
        else if (fault.Kind == FaultKind.BlockedLine && fault.Size is not (> 0 and <= 1))
        {
            yield return new Finding($"{path}.size", given, "the share of the flow that is lost, above 0 to 1");
        }
    }
}
