using System.Globalization;
using PileController.Control.Readings;
using PileController.Panel.Commands;
using PileController.Physics.Heaps;
using PileController.Settings;
using PileController.Settings.Checks;
using PileController.Settings.Fields;

namespace PileController.Panel.Planning;

/// <summary>Settings with a grower's changes put on, or the field that cannot be.</summary>
internal static class TriedSettings
{
    private static readonly Check[] Buildable = [.. HeapChecks.All, .. OrderChecks.All];

    /// <summary>The settings as tried. The running ones stay as they are.</summary>
    /// <exception cref="FieldFaultException">A value out of range, or one that cannot be built beside the others.</exception>
    public static PileSettings Of(PileSettings built, PlanChanges changes)
    {
        TryField[] given = [.. TryField.All.Where(field => changes.Of(field) is not null)];
        HeapBuild heap = built.Heap;
        foreach (TryField field in given)
        {
            double value = changes.Of(field)!.Value;
            double most = field.Most(heap);
            heap = value >= field.Least && value <= most
                ? field.With(heap, value)
                : throw BodyFields.Fault(field.Name, Text(value), $"a number from {Text(field.Least)} to {Text(most)}");
        }

        PileSettings tried = Moved(built with { Heap = heap }, built.Heap);
        foreach (Check check in Buildable)
        {
            if (given.FirstOrDefault(field => check.Paths.Contains(field.Path)) is { } field
                && check.Find(tried, new FileReading()).FirstOrDefault() is { } finding)
            {
                throw BodyFields.Fault(
                    field.Name, Text(changes.Of(field)!.Value), $"what can be built: {finding.Path} is then {finding.Given}, allowed {finding.Allowed}");
            }
        }

        return tried;
    }

    private static string Text(double value) => value.ToString("0.####", CultureInfo.InvariantCulture);

    // The probe at the turns goes where the turns go; the others keep their share of the radius.
    private static PileSettings Moved(PileSettings tried, HeapBuild from)
    {
        if (tried.Heap == from)
        {
            return tried;
        }

        double ratio = tried.Heap.RadiusM / from.RadiusM;
        tried = tried with
        {
            Rig = tried.Rig with
            {
                Probes =
                [
                    .. tried.Rig.Probes.Select(probe => probe with
                    {
                        RadiusM = probe.Channel == Channel.HeapTurns
                            ? Math.Max(0, probe.RadiusM + tried.Heap.Coil.RadiusM - from.Coil.RadiusM)
                            : probe.RadiusM * ratio,
                    }),
                ],
            },
        };
        return tried with { Control = tried.Control with { Places = ProbePlaces.Of(tried) } };
    }
}
