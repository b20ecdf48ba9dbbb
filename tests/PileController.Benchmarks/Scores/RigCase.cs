using PileController.Control.Readings;
using PileController.Control.Regulation;
using PileController.Physics.Heaps;
using PileController.Physics.Houses;
using PileController.Settings;

namespace PileController.Benchmarks.Scores;

/// <summary>One holding of the scoreboard: how it is built and fitted, and what its controller was told of it.</summary>
/// <param name="Name">A short name.</param>
/// <param name="Settings">Build, probes, faults, and the figures told to the controller.</param>
internal sealed record RigCase(string Name, PileSettings Settings)
{
    // Share of a heap's heat capacity per kilogram as built at Alder Bank, J/(kg·K): what a grower would tell of any heap.
    private const double ToldJPerKgK = 2.6e7 / 9000;

    // What a grower would tell of a coil from its length, W/(m·K).
    private const double ToldCoilWPerMK = 80.0 / 120;

    private static readonly PileSettings Standard = PileSettings.AlderBank;

    /// <summary>All of them; the first is Alder Bank as it ships.</summary>
    public static IReadOnlyList<RigCase> All { get; } =
    [
        new("Alder Bank", Standard),
        new("small heap", Built(h => h with { RadiusM = 1.45, HeightM = 1.8, WetMassKg = 4700, Coil = h.Coil with { RadiusM = 0.8, LengthM = 70 }, Duct = h.Duct with { RadiusM = 0.5, LengthM = 8 } })),
        new("large heap", Built(h => h with { RadiusM = 2.5, HeightM = 2.2, WetMassKg = 17_000, Coil = h.Coil with { RadiusM = 1.3, LengthM = 180 } })),
        new("coil only at the drum", Built(h => h with { Coil = h.Coil with { RadiusM = 0.45, LengthM = 60 } })),
        new("dead probe at the turns", Without(Channel.HeapTurns)),
        new("no flow meter", Without(Channel.Flow)),
        new("weak battery", Standard with { Power = Standard.Power with { BatteryWattHours = 600, PanelWatts = 100 } }),
        new("on/off pump", Standard with { Control = Standard.Control with { Drive = PumpDrive.OnOff } }),
        new("valve throttled", Standard with { Control = Standard.Control with { Drive = PumpDrive.Valve, ValveFeedback = ValveFeedback.None } }),
        new("leaky house", Housed(h => h with { AirChangesPerHour = 2.5 })),
        new("blanket off", Built(h => h with { CoverThicknessM = 0 })),
        new("open lines", Standard with { Loop = Standard.Loop with { LineExposure = 1, LineLossWPerMK = 0.3 } }),
        new("air through the heap", Built(h => h with { Duct = h.Duct with { ThroughHeap = true, FullFlowM3PerS = 0.004 } })),
        new("told 40 % too much", Told(1.4)),
        new("told 40 % too little", Told(0.6)),
        new("probes 0.5 K off", Standard with
        {
            Rig = Standard.Rig with
            {
                Probes = [.. Standard.Rig.Probes.Select((p, i) => IsHeap(p.Channel) ? p with { OffsetKelvin = i % 2 == 0 ? 0.5 : -0.5 } : p)],
            },
        }),
    ];

    private static bool IsHeap(Channel channel) =>
        channel is Channel.HeapCore or Channel.HeapMiddle or Channel.HeapTurns or Channel.HeapEdge;

    private static PileSettings Built(Func<HeapBuild, HeapBuild> change)
    {
        HeapBuild heap = change(Standard.Heap);
        double turns = heap.Coil.RadiusM;
        PileSettings settings = Standard with
        {
            Heap = heap,
            Rig = Standard.Rig with
            {
                Probes =
                [
                    .. Standard.Rig.Probes.Select(p => p.Channel switch
                    {
                        Channel.HeapMiddle => p with { RadiusM = 0.5 * (0.45 + Math.Max(turns, 1)) },
                        Channel.HeapTurns => p with { RadiusM = turns },
                        Channel.HeapEdge => p with { RadiusM = heap.RadiusM - 0.3 },
                        _ => p,
                    }),
                ],
            },
        };
        return settings with
        {
            Control = Derived.Of(settings) with
            {
                HeapHeatCapacityJPerK = ToldJPerKgK * heap.WetMassKg,
                CoilWPerK = ToldCoilWPerMK * heap.Coil.LengthM,
                BlowerFullFlowM3PerS = heap.Duct.FullFlowM3PerS,
            },
        };
    }

    private static PileSettings Housed(Func<HouseBuild, HouseBuild> change)
    {
        HouseBuild house = change(Standard.House);
        PileSettings settings = Standard with { House = house };
        return settings with { Control = Derived.Of(settings) with { HouseLossWPerK = Math.Round(house.LossWPerK) } };
    }

    private static PileSettings Without(Channel channel) => Standard with
    {
        Rig = Standard.Rig with { Probes = [.. Standard.Rig.Probes.Where(p => p.Channel != channel)] },
    };

    private static PileSettings Told(double share) => Standard with
    {
        Control = Standard.Control with
        {
            HeapHeatCapacityJPerK = share * Standard.Control.HeapHeatCapacityJPerK,
            CoilWPerK = share * Standard.Control.CoilWPerK,
            HouseLossWPerK = share * Standard.Control.HouseLossWPerK,
            House = Standard.Control.House with
            {
                FloorJPerK = share * Standard.Control.House.FloorJPerK,
                FloorWPerK = share * Standard.Control.House.FloorWPerK,
                PipeWPerK = share * Standard.Control.House.PipeWPerK,
            },
        },
    };
}
