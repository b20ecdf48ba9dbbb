using PileController.Rigs;
using PileController.Settings.Fields;
using static PileController.Settings.Kinds.Kind;

namespace PileController.Settings.Tables;

/// <summary>Section "rig".</summary>
internal static class RigFields
{
    public static readonly FieldTable<RigSettings> Table = new()
    {
        { "kind", Word(("simulated", true), ("hardware", false)), r => r.Simulated, (r, v) => r with { Simulated = v }, "Whether probes and actuators are simulated or real." },
        { "probes", ProbeFields.Table, ProbeFields.Blank, ProbeFields.Understood, r => r.Probes, (r, v) => r with { Probes = v }, "The probes that are fitted, at most one for each channel." },
        { "pulsesPerLitre", PulsesPerLitre(1, 100_000), r => r.PulsesPerLitre, (r, v) => r with { PulsesPerLitre = v }, "Pulses of the flow meter." },
        { "seed", Whole(0, long.MaxValue), r => r.Seed, (r, v) => r with { Seed = v!.Value }, "Seed of the simulated probes' noise." },
        { "faults", FaultFields.Table, FaultFields.Blank, _ => FaultFields.Blank, r => r.Faults, (r, v) => r with { Faults = v }, "Faults the rig starts with; for trials." },
        { "hardware", HardwareFields.Table, r => r.Hardware, (r, v) => r with { Hardware = v }, "Where the real rig's devices are." },
    };
}
