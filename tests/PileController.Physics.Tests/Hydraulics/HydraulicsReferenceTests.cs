using System.Text.RegularExpressions;
using PileController.Physics.Hydraulics;

namespace PileController.Physics.Tests.Hydraulics;

public class HydraulicsReferenceTests
{
    private const double LitresPerGallon = 3.785411784;
    private const double Inch = 0.0254;
    private const double PascalsPerPsi = 6894.757293168;

    private static readonly IReadOnlyDictionary<string, ReferenceRow> Rows = ReferenceRow.Read("hydraulics");

    private static readonly PumpCurve Unit = new(1, 1, 1);

    // Two and a half inch SDR-9 PEX: outside 2.625 in, bore 7/9 of it (from memory); 1.5 ft/s.
    private static readonly PipeRun WidePex = new(30.48, 2.625 * Inch * 7 / 9);
    private static readonly double WideFlow = 1.5 * 0.3048 * Math.PI / 4 * WidePex.InnerDiameterM * WidePex.InnerDiameterM * 60_000;

    // Schedule 40, nominal 50 mm: bore 52.5 mm (from memory).
    private static readonly PipeRun Schedule40 = new(1, 0.0525, RoughnessM: 0);

    private static readonly Dictionary<string, Func<double>> Computed = new()
    {
        ["HYD-025"] = () => WidePex.LossPa(WideFlow, (40 - 32) / 1.8) / WidePex.LossPa(WideFlow, (180 - 32) / 1.8),
        ["HYD-060"] = () => Friction.Churchill(1e5, 1e-4),
        ["HYD-063"] = () => Friction.Laminar(128),
        ["HYD-066"] = () => Flow.PressurePa(1, 2.6),
        ["HYD-073"] = () => Schedule40.Reynolds(200, 30),
        ["HYD-074"] = () => Friction.Churchill(Schedule40.Reynolds(200, 30), 0),
        ["HYD-078"] = () => 400 * FreeFlow(1700.0 / 3500),
        ["HYD-079"] = () => 126 * Unit.HeadM(0, 1700.0 / 3500),
        ["HYD-080"] = () => 17.5 * Unit.Watts(1700.0 / 3500),
        ["HYD-082"] = () => new PumpCurve(3.5, 12, 20).FlowAgainstQuadratic(1, 0.254409),
        ["HYD-084"] = () => Loss(0.190, LitresPerGallon, 40),
    };

    public static TheoryData<string> Ids => [.. Rows.Keys];

    [Theory]
    [MemberData(nameof(Ids))]
    public void Hydraulics_AtPublishedConditions_AgreesWithTheReference(string id)
    {
        ReferenceRow row = Rows[id];
        row.Check(Computed.TryGetValue(id, out Func<double>? compute) ? compute() : OfPex(row));
    }

    // "published PEX loss at 1 US gal/min, 1/2 in: …", "Darcy loss at 1 US gal/min, 1/2 in (ID 0.475 in): 10 degC", …
    private static double OfPex(ReferenceRow row)
    {
        string[] parts = row.Conditions.Split(": ", 2);
        string size = parts[0].Split(", ")[^1].Split(" in")[0];
        PipeSize pipe = PipeSize.Named($"{size} in PEX");
        double gallons = parts[0].Contains("at 2 US gal/min") ? 2 : 1;
        // The published tables state no temperature; they match 40 °C.
        Match stated = Regex.Match(parts[1], "^([0-9]+) degC$");
        double waterC = stated.Success ? double.Parse(stated.Groups[1].Value) : 40;
        return (parts[0].Split(' ')[0], row.Unit) switch
        {
            ("PEX", "in") => pipe.InnerDiameterM / Inch,
            ("Reynolds", "-") => new PipeRun(1, pipe.InnerDiameterM).Reynolds(gallons * LitresPerGallon, waterC),
            (_, "psi/100 ft") => Loss(pipe.InnerDiameterM / Inch, gallons * LitresPerGallon, waterC),
            _ => throw new InvalidOperationException($"{row.Id} is not computed: {row.Conditions} in {row.Unit}."),
        };
    }

    private static double Loss(double boreInch, double flowLitresPerMinute, double waterC) =>
        new PipeRun(30.48, boreInch * Inch).LossPa(flowLitresPerMinute, waterC) / PascalsPerPsi;

    private static double FreeFlow(double duty) => Unit.FlowAgainstQuadratic(duty, 0);
}
