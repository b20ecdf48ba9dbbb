using PileController.Physics.Hydraulics;
using PileController.Settings.Fields;
using static PileController.Settings.Kinds.Kind;

namespace PileController.Settings.Tables;

/// <summary>Section "loop".</summary>
internal static class LoopFields
{
    public static readonly FieldTable<LoopBuild> Table = new()
    {
        { "lineLength", Metres(0, 200), l => l.LineLengthM, (l, v) => l with { LineLengthM = v }, "Length of each of the two lines between heap and house." },
        { "lineLoss", WattsPerMetreKelvin(0, 5), l => l.LineLossWPerMK, (l, v) => l with { LineLossWPerMK = v }, "Loss of a line to its surroundings; about 0.3 W/mK insulated in the open, 0.12 W/mK insulated and buried." },
        { "lineExposure", Share(0, 1), l => l.LineExposure, (l, v) => l with { LineExposure = v }, "How far the surroundings of the lines follow the air outside: 0 as the deep ground, 1 in the open." },
        { "innerDiameter", MetresAsMm(0.003, 0.1), l => l.LineInnerDiameterM, (l, v) => l with { LineInnerDiameterM = v }, "Inside diameter of lines and house pipe." },
        { "housePipe", Metres(0, 1000), l => l.HousePipeM, (l, v) => l with { HousePipeM = v }, "Length of pipe in the house." },
        { "housePipeGives", WattsPerMetreKelvin(0, 20), l => l.HousePipeWPerMK, (l, v) => l with { HousePipeWPerMK = v }, "Heat given by the house pipe." },
        { "tank", Litres(0, 5000), l => l.TankLitres, (l, v) => l with { TankLitres = v }, "Water in the overflow tank, 0 L for none." },
        { "tankLoss", WattsPerKelvin(0, 200), l => l.TankLossWPerK, (l, v) => l with { TankLossWPerK = v }, "Loss of the tank to the house air." },
        { "staticLift", Metres(0, 20), l => l.StaticLiftM, (l, v) => l with { StaticLiftM = v }, "Lift the pump must overcome, 0 m in a closed, full loop." },
        { "pumpShutoffHead", Metres(0.2, 60), l => l.PumpShutoffHeadM, (l, v) => l with { PumpShutoffHeadM = v }, "Pump head at no flow and full duty." },
        { "pumpFreeFlow", LitresPerMinute(0.5, 200), l => l.PumpFreeFlowLitresPerMinute, (l, v) => l with { PumpFreeFlowLitresPerMinute = v }, "Pump flow at no head and full duty." },
        { "pumpPower", Watts(1, 2000), l => l.PumpWatts, (l, v) => l with { PumpWatts = v }, "Electric power of the pump at full duty." },
        { "pumpStartDuty", Share(0, 0.9), l => l.PumpStartDuty, (l, v) => l with { PumpStartDuty = v }, "Duty below which the pump does not turn." },
        { "valveTravel", Seconds(0, 600), l => l.ValveTravelSeconds, (l, v) => l with { ValveTravelSeconds = v }, "Time the valve takes from shut to open, 0 s for no valve." },
    };
}
