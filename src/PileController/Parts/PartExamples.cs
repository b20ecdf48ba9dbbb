using PileController.Physics.Hydraulics;
using PileController.Settings;

namespace PileController.Parts;

/// <summary>Commented files to begin with.</summary>
internal static class PartExamples
{
    public static string Pump => PartFile.Explain("A pump: what was measured at the bench.", PumpFields.Table, new PumpPart
    {
        Name = "pump A",
        RatedVolts = 12,
        StartDuty = 0.15,
        Points =
        [
            new PumpPointPart { FlowLitresPerMinute = 0, HeadM = 8, Volts = 12, Amperes = 1.8 },
            new PumpPointPart { BucketLitres = 10, Seconds = 72, HeadM = 4, Volts = 12, Amperes = 1.9 },
            new PumpPointPart { BucketLitres = 10, Seconds = 53, HeadM = 1, Volts = 12, Amperes = 2 },
        ],
    });

    public static string Loop => PartFile.Explain("A water loop and what powers its pump.", LoopPartFields.Table, new LoopPart
    {
        PanelWatts = 200,
        BatteryWattHours = 1200,
        Runs =
        [
            new RunPart { Tube = PipeSize.Named("1/2 in PEX"), LengthM = 90, TurnDiameterM = 1.8, Fittings = [Count("elbow", 6), Count("entrance", 1), Count("exit", 1)] },
            new RunPart { Tube = PipeSize.Named("3/4 in PEX"), LengthM = 24, Fittings = [Count("ball-valve", 2), Count("check-valve", 1)] },
        ],
    });

    private static FittingCount Count(string name, int count) => new(Fitting.Find(name)!, count);
}
