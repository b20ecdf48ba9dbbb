using PileController.Settings.Fields;
using static PileController.Settings.Kinds.Kind;

namespace PileController.Parts;

/// <summary>Keys of a pump's file.</summary>
internal static class PumpFields
{
    private static readonly FieldTable<PumpPointPart> Point = new()
    {
        { "flow", Optional(LitresPerMinute(0, 1000)), p => p.FlowLitresPerMinute, (p, v) => p with { FlowLitresPerMinute = v }, "Flow by a meter; or bucket and time." },
        { "bucket", Optional(Litres(0.1, 1000)), p => p.BucketLitres, (p, v) => p with { BucketLitres = v }, "Water caught in the bucket." },
        { "time", Optional(Seconds(1, 86_400)), p => p.Seconds, (p, v) => p with { Seconds = v }, "Time it took to catch it." },
        { "head", Metres(0, 200), p => p.HeadM, (p, v) => p with { HeadM = v }, "Height of the hose's end over the water the pump draws from, with a hose so wide and short that it costs nothing.", true },
        { "power", Optional(Watts(0.01, 5000)), p => p.Watts, (p, v) => p with { Watts = v }, "Electric power by a meter; or voltage and current." },
        { "voltage", Optional(Volts(0.5, 400)), p => p.Volts, (p, v) => p with { Volts = v }, "Voltage at the pump." },
        { "current", Optional(Amperes(0.001, 100)), p => p.Amperes, (p, v) => p with { Amperes = v }, "Current it takes." },
        { "duty", Optional(Share(0.01, 1)), p => p.Duty, (p, v) => p with { Duty = v }, "Duty it ran at; without it, voltage over ratedVoltage, or else full." },
    };

    public static readonly FieldTable<PumpPart> Table = new()
    {
        { "name", Text("a name of up to 60 letters", n => n.Trim().Length is > 0 and <= 60), p => p.Name, (p, v) => p with { Name = v! }, "What to call it." },
        { "ratedVoltage", Optional(Volts(0.5, 400)), p => p.RatedVolts, (p, v) => p with { RatedVolts = v }, "Voltage of full duty." },
        { "startDuty", Share(0, 0.9), p => p.StartDuty, (p, v) => p with { StartDuty = v }, "Duty below which it does not turn." },
        { "points", Point, new PumpPointPart(), _ => new PumpPointPart(), p => p.Points, (p, v) => p with { Points = v }, "Two or more measurements; the head must fall as the flow rises." },
    };
}
