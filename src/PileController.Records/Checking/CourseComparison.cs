using PileController.Control.Decisions;
using PileController.Control.Modes;

namespace PileController.Records.Checking;

/// <summary>A stretch of a record under the settings it was made with and under others.</summary>
/// <param name="FromUtcMilliseconds">First moment, inclusive.</param>
/// <param name="ToUtcMilliseconds">Last moment, exclusive.</param>
/// <param name="Ticks">Ticks in it.</param>
/// <param name="AsRecorded">Ticks that, with the settings they were made with, came out as recorded to the bit.</param>
/// <param name="Differing">Ticks that would have been decided otherwise.</param>
/// <param name="FirstDifference">The first of them, or null.</param>
/// <param name="Then">With the settings it was made with.</param>
/// <param name="Now">With the others.</param>
/// <param name="Problems">What could not be read or run and was left out.</param>
public sealed record CourseComparison(
    long FromUtcMilliseconds, long ToUtcMilliseconds, long Ticks, long AsRecorded, long Differing,
    ReplayDifference? FirstDifference, CourseSum Then, CourseSum Now, IReadOnlyList<string> Problems);

/// <summary>What one course of a stretch comes to.</summary>
/// <param name="GrantJoules">Heat allowed, J.</param>
/// <param name="WaterJoules">Heat drawn by water, as metered from the recorded readings, J.</param>
/// <param name="AirJoules">Heat drawn by air, as metered from the recorded readings, J.</param>
/// <param name="Modes">Ticks in each mode that occurred.</param>
/// <param name="Curbs">Ticks under each curb that occurred.</param>
public sealed record CourseSum(
    double GrantJoules, double WaterJoules, double AirJoules,
    IReadOnlyDictionary<Mode, long> Modes, IReadOnlyDictionary<Curb, long> Curbs);
