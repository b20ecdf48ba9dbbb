using PileController.Control.Readings;
using PileController.Rigs;
using PileController.Settings.Fields;
using PileController.Settings.Tables;

namespace PileController.Settings.Checks;

/// <summary>Probes: one for each channel, where they can be, one address each.</summary>
internal static class ProbeChecks
{
    private const string Probes = "rig.probes";

    private static readonly string[] PlaceKeys = ["radius", "height"];

    public static readonly Check[] All =
    [
        new([Probes], (s, _) => Twice(s, p => ChannelTable.Of(p.Channel).Name, "channel", "one probe for each channel")),
        new([Probes], (s, _) => Twice(s, p => p.Address, "address", "an address of its own")),
        new([Probes], NotPlaced),
        new([Probes], PlacedForNothing),
        new([Probes, "heap.radius", "heap.height"], OutsideTheHeap),
        new([Probes], NotInOrder),
        new([Probes], LabelledForNothing),
        new([Probes], (s, _) => Twice(s, p => p.Label, "label", "a name of its own")),
    ];

    private static IEnumerable<Finding> Twice(
        PileSettings settings, Func<ProbeFit, string?> mark, string key, string allowed)
    {
        Dictionary<string, int> first = [];
        for (int i = 0; i < settings.Rig.Probes.Count; i++)
        {
            if (mark(settings.Rig.Probes[i]) is string value && !first.TryAdd(value, i))
            {
                yield return new Finding(
                    $"{Probes}[{i}].{key}", $"\"{value}\"", $"{allowed}; {Probes}[{first[value]}] has it already");
            }
        }
    }

    private static IEnumerable<Finding> NotPlaced(PileSettings settings, FileReading reading) =>
        from i in Indices(settings)
        where ProbeFields.IsInHeap(settings.Rig.Probes[i].Channel) && reading.LineOf($"{Probes}[{i}]") is not null
        from key in PlaceKeys
        where reading.LineOf($"{Probes}[{i}].{key}") is null
        select new Finding($"{Probes}[{i}].{key}", "missing", $"the {key} at which this heap probe sits, for example \"1 m\"");

    private static IEnumerable<Finding> PlacedForNothing(PileSettings settings, FileReading reading) =>
        from i in Indices(settings)
        where !ProbeFields.IsInHeap(settings.Rig.Probes[i].Channel)
        from key in PlaceKeys
        let path = $"{Probes}[{i}].{key}"
        where reading.LineOf(path) is not null
            && (key == "radius" ? settings.Rig.Probes[i].RadiusM : settings.Rig.Probes[i].HeightM) != 0
        select new Finding(path, reading.GivenAt(path)!, "heap probes only; leave it out here");

    private static IEnumerable<Finding> OutsideTheHeap(PileSettings settings, FileReading reading)
    {
        foreach (int i in Indices(settings))
        {
            ProbeFit probe = settings.Rig.Probes[i];
            if (ProbeFields.IsInHeap(probe.Channel) && probe.RadiusM >= settings.Heap.RadiusM)
            {
                yield return new Finding($"{Probes}[{i}].radius", $"{probe.RadiusM:G4} m", $"below heap.radius, {settings.Heap.RadiusM:G4} m");
            }

            if (ProbeFields.IsInHeap(probe.Channel) && probe.HeightM > settings.Heap.HeightM)
            {
                yield return new Finding($"{Probes}[{i}].height", $"{probe.HeightM:G4} m", $"at most heap.height, {settings.Heap.HeightM:G4} m");
            }
        }
    }

    /// <summary>The controller draws a profile through them from the axis outward: each must sit further out than the one before.</summary>
    private static IEnumerable<Finding> NotInOrder(PileSettings settings, FileReading reading)
    {
        int[] inward = [.. Indices(settings)
            .Where(i => ProbeFields.IsInHeap(settings.Rig.Probes[i].Channel))
            .OrderBy(i => settings.Rig.Probes[i].Channel)];
        for (int n = 1; n < inward.Length; n++)
        {
            ProbeFit inner = settings.Rig.Probes[inward[n - 1]];
            ProbeFit outer = settings.Rig.Probes[inward[n]];
            if (outer.Channel != inner.Channel && outer.RadiusM <= inner.RadiusM)
            {
                yield return new Finding(
                    $"{Probes}[{inward[n]}].radius", $"{outer.RadiusM:G4} m",
                    $"above {inner.RadiusM:G4} m, where the {ChannelTable.Of(inner.Channel).Name} probe sits");
            }
        }
    }

    private static IEnumerable<Finding> LabelledForNothing(PileSettings settings, FileReading reading) =>
        from i in Indices(settings)
        let probe = settings.Rig.Probes[i]
        where probe.Label is not null && !ProbeFields.IsSpare(probe.Channel)
        select new Finding($"{Probes}[{i}].label", $"\"{probe.Label}\"", "spareOne to spareFour only; leave it out here");

    private static IEnumerable<int> Indices(PileSettings settings) => Enumerable.Range(0, settings.Rig.Probes.Count);
}
