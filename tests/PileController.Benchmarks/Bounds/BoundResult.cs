using System.Text.Json.Serialization;
using PileController.Benchmarks.Scores;

namespace PileController.Benchmarks.Bounds;

/// <summary>What one start came to, on the exact plant, with the floor held.</summary>
internal sealed record StartResult(string Name, double ColdDegreeHours, double HoursBelowFloor);

/// <summary>The bound of one rig in one weather.</summary>
/// <param name="NoneColdDegreeHours">With nothing drawn, K·h.</param>
/// <param name="ColdDegreeHours">Of the best plan found, K·h: a plan that can be carried out.</param>
/// <param name="HoursBelowFloor">Of that plan, h; 0 unless the floor is undercut with nothing drawn too.</param>
/// <param name="LeastActiveZoneC">Of that plan after lighting, °C.</param>
/// <param name="DrawnKWh">Of that plan, kWh.</param>
/// <param name="CertificateColdDegreeHours">No plan goes below this, K·h.</param>
/// <param name="Starts">What each start came to.</param>
/// <param name="Plan">The plan, hour by hour.</param>
internal sealed record BoundResult(
    double NoneColdDegreeHours, double ColdDegreeHours, double HoursBelowFloor, double LeastActiveZoneC, double DrawnKWh,
    double CertificateColdDegreeHours, IReadOnlyList<StartResult> Starts, Schedule Plan)
{
    /// <summary>What the best plan avoids, K·h.</summary>
    [JsonIgnore]
    public double Avoided => NoneColdDegreeHours - ColdDegreeHours;

    /// <summary>Worst start against best, as a share of what the best avoids.</summary>
    [JsonIgnore]
    public double Spread => (Starts.Max(s => s.ColdDegreeHours) - Starts.Min(s => s.ColdDegreeHours)) / Math.Max(1, Avoided);

    /// <summary>What a plan better than ours could avoid at most beyond it, as a share of what ours avoids.</summary>
    [JsonIgnore]
    public double Gap => (ColdDegreeHours - CertificateColdDegreeHours) / Math.Max(1, Avoided);

    /// <summary>Captured fraction of a rule; null where there is too little to win, or the plan does not keep to the floor.</summary>
    /// <param name="noneColdDegreeHours">Of the rule that draws nothing, on the same probes, K·h.</param>
    /// <param name="ruleColdDegreeHours">Of the rule, K·h.</param>
    public double? Captured(double noneColdDegreeHours, double ruleColdDegreeHours) =>
        HoursBelowFloor > 0 || noneColdDegreeHours - ColdDegreeHours < Capture.LeastScored
            ? null
            : Capture.Share(noneColdDegreeHours, ColdDegreeHours, ruleColdDegreeHours);
}
