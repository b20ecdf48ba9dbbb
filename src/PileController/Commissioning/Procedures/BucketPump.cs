using System.Globalization;
using PileController.Control.Readings;
using PileController.Control.Regulation;
using PileController.Parts;
using PileController.Physics.Hydraulics;
using PileController.Settings;

namespace PileController.Commissioning.Procedures;

/// <summary>The pump at several duties or heights: its curve, as a file that calc pump reads.</summary>
internal static class BucketPump
{
    /// <summary>Duties that are run when none are told; a pump on a relay knows the full one only, and is lifted higher instead.</summary>
    public static IReadOnlyList<double> UsualDuties(PileSettings settings) =>
        settings.Control.Drive == PumpDrive.OnOff ? [1, 1] : [1, 0.8, 0.6];

    // The flow has settled when it stays within this (common practice, no source).
    private const double SettledShare = 0.02;
    private const double SettleSeconds = 40;

    // A curve that misses a point by more than this share of its shut-off head is no good fit (common practice, no source).
    private const double MissShare = 0.1;

    /// <summary>The test. What has no probe is asked: flow by bucket and watch, power by a meter.</summary>
    /// <param name="settings">The holding.</param>
    /// <param name="duties">The duty of each point, 0 to 1, two at least.</param>
    public static Procedure Of(PileSettings settings, IReadOnlyList<double> duties) => new(
        "pump-curve", "Bucket test of the pump",
        [
            "The water may be hot enough to scald: gloves, and the hose's end tied fast.",
            "A pump that runs dry is damaged within minutes: keep what it draws from topped up.",
        ],
        [.. duties.SelectMany((duty, index) => Point(settings, duty, index + 1, duties.Count))],
        trace => [Judge(trace, settings, duties)]);

    private static IEnumerable<Phase> Point(PileSettings settings, double duty, int point, int points)
    {
        yield return new Phase($"ready-{point}", $"Point {point} of {points}, the pump at {Wording.Share(duty)}. Tie the end of a wide, short hose at its height over the water the pump draws from{(point > 1 ? "; another height than before where the duty is the same" : "")}. Then go on: the pump starts by itself.")
        {
            Moves = Moves.Rest(settings),
            Asks = true,
            MostSeconds = 1800,
        };
        yield return new Phase($"run-{point}", "The pump runs until the flow has settled.")
        {
            Moves = Moves.Run(settings, duty),
            LeastSeconds = SettleSeconds + 20,
            MostSeconds = 240,
            Enough = IsSettled,
        };
        yield return Asked($"head-{point}", settings, duty, Question.Number("How high is the hose's end over the water the pump draws from?", "m", 0, 200));
        if (!Fitted.Has(settings, Channel.Flow))
        {
            yield return Asked($"flow-{point}", settings, duty, Question.Number("How much runs, by bucket and watch? Litres in the bucket, times 60, by the seconds it took.", "L/min", 0, 1000));
        }

        if (!Fitted.Has(settings, Channel.PumpPower))
        {
            yield return Asked($"power-{point}", settings, duty, Question.Number("What does the pump take? Volts times amperes, or by a power meter.", "W", 0.01, 5000));
        }
    }

    private static Phase Asked(string id, PileSettings settings, double duty, Question question) =>
        new(id, "The pump runs on.") { Moves = Moves.Run(settings, duty), Asks = true, MostSeconds = 900, Question = question };

    private static Series Settled(IReadOnlyList<Look> looks) => Series.Of(Series.Last(looks, SettleSeconds), Channel.Flow);

    private static bool IsSettled(IReadOnlyList<Look> looks) => Settled(looks) is var flow && flow.Deviation <= SettledShare * flow.Mean;

    private static Outcome Judge(Trace trace, PileSettings settings, IReadOnlyList<double> duties)
    {
        List<PumpPointPart> points = [];
        List<string> restless = [];
        for (int point = 1; point <= duties.Count; point++)
        {
            IReadOnlyList<Look> looks = trace[$"run-{point}"].Since;
            double flow = Fitted.Has(settings, Channel.Flow) ? Settled(looks).Mean : trace[$"flow-{point}"].Figure!.Value;
            double power = Fitted.Has(settings, Channel.PumpPower) ? Series.Of(Series.Last(looks, SettleSeconds), Channel.PumpPower).Mean : trace[$"power-{point}"].Figure!.Value;
            if (!double.IsFinite(flow) || !double.IsFinite(power))
            {
                return new Outcome("pump", Soundness.Failed, $"Point {point}: the {(double.IsFinite(flow) ? "power" : "flow")} could not be read.");
            }

            if (Fitted.Has(settings, Channel.Flow) && !IsSettled(looks))
            {
                restless.Add($"{point}");
            }

            points.Add(new PumpPointPart
            {
                FlowLitresPerMinute = Math.Round(flow, 2),
                HeadM = trace[$"head-{point}"].Figure!.Value,
                Watts = Math.Round(power, 2),
                Duty = Math.Round(duties[point - 1], 3),
            });
        }

        PumpPart part = new() { Name = "measured pump", Points = points };
        SettingsFault[] faults = [.. PumpChecks.Of(part)];
        return faults.Length > 0
            ? new Outcome("pump", Soundness.Failed, $"These points make no pump: {string.Join(" ", faults.Select(fault => fault.Sentence))}")
            : Fit(part, restless);
    }

    private static Outcome Fit(PumpPart part, List<string> restless)
    {
        PumpCurve curve = part.Curve();
        double miss = part.LargestMissM(curve);
        bool good = miss <= MissShare * curve.ShutoffHeadM;
        string found = $"Through {part.Points.Count} points: {Wording.Number(curve.ShutoffHeadM, 2)} m at no flow and {Wording.Number(curve.FreeFlowLitresPerMinute)} L/min at no head; the worst point is missed by {Wording.Number(miss, 2)} m";
        return new Outcome("pump", good && restless.Count == 0 ? Soundness.Sound : Soundness.Doubtful, !good ? $"{found}: one of them was measured askew."
            : restless.Count > 0 ? $"{found}; the flow never settled at point {Wording.All(restless)}: air, or a hose that moved. Do it again."
            : $"{found}.")
        {
            Figure = curve.ShutoffHeadM,
            Unit = "m",
            Uncertainty = Uncertain.Expanded(Uncertain.Within(miss)),
            Adopt =
            [
                new SettingsLine("loop.pumpShutoffHead", Quoted(curve.ShutoffHeadM, "m"), FromPage: true),
                new SettingsLine("loop.pumpFreeFlow", Quoted(curve.FreeFlowLitresPerMinute, "L/min"), FromPage: true),
            ],
            File = PartFile.Explain("A pump: what a bucket test of the rig found.", PumpFields.Table, part),
        };
    }

    private static string Quoted(double value, string unit) => string.Create(CultureInfo.InvariantCulture, $"\"{value:0.00} {unit}\"");
}
