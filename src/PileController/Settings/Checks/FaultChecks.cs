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
        new([Faults, "rig.probes"], (s, _) => s.Rig.Faults.SelectMany((f, i) => NotFitted(s, f, $"{Faults}[{i}]"))),
        new([Faults], (s, r) => s.Rig.Faults.SelectMany((f, i) => Senseless(f, $"{Faults}[{i}]", r))),
    ];

    private static IEnumerable<Finding> NotFitted(PileSettings settings, Fault fault, string path)
    {
        if (fault.Channel is { } channel && FaultRules.Find(fault)?.Field != "channel"
            && settings.Rig.Probes.All(p => p.Channel != channel))
        {
            yield return new Finding($"{path}.channel", $"\"{ChannelTable.Of(channel).Name}\"", "a channel with a probe in rig.probes");
        }
    }

    private static IEnumerable<Finding> Senseless(Fault fault, string path, FileReading reading)
    {
        if (FaultRules.Find(fault) is { } complaint)
        {
            // As the writer of the file gave it; a field left out has no words of its own there.
            string field = $"{path}.{complaint.Field}";
            yield return new Finding(field, reading.GivenAt(field) ?? "missing", complaint.Allowed);
        }
    }
}
