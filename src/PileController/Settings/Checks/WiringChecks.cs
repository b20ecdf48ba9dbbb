using PileController.Control.Readings;
using PileController.Rigs;
using PileController.Rigs.Hardware;
using PileController.Settings.Fields;

namespace PileController.Settings.Checks;

/// <summary>How the probes hang on the real rig: nothing twice, nothing missing, nothing that tells something else than it seems to.</summary>
internal static class WiringChecks
{
    public static readonly Check[] All =
    [
        new(["rig.probes", "rig.hardware"], (s, _) => WiringFaults.Of(s.Rig).Select(f => new Finding($"rig.probes[{f.Probe}].{f.Key}", f.Given, f.Allowed))),
        new(["rig.kind", "rig.probes"], Unwired),
    ];

    private static IEnumerable<Finding> Unwired(PileSettings settings, FileReading reading) =>
        settings.Rig.Simulated
            ? []
            : settings.Rig.Probes
                .Select((probe, i) => (Probe: probe, Path: $"rig.probes[{i}]"))
                .Where(p => p.Probe.Source is null)
                .Select(p => Wanted(p.Path, ChannelTable.Of(p.Probe.Channel)));

    private static Finding Wanted(string path, ChannelInfo channel)
    {
        ProbeSource[] sources = SourceTable.For(channel.Channel);
        string words = string.Join(" or ", sources.Where(s => s != ProbeSource.OneWire).Select(s => $"\"{SourceTable.Word(s)}\""));
        return sources switch
        {
            [] => new Finding($"{path}.channel", $"\"{channel.Name}\"", "another channel: no adapter reads this one yet (a hardware rig)"),
            [ProbeSource.OneWire, ..] => new Finding(
                $"{path}.address", "none",
                $"the 1-Wire address of the {channel.Name} probe, \"28-\" and twelve digits 0-9 or a-f, or \"from\" with {words}"),
            _ => new Finding($"{path}.from", "none", $"{words}, by which the {channel.Name} probe is read (a hardware rig)"),
        };
    }
}
