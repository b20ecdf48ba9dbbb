using PileController.Seasons;

namespace PileController.Benchmarks.Scores;

/// <summary>
/// One line of the scoreboard: a rig, a winter and a draw rule, or the bound, of which only the plant's own figures are told. Names are those of the JSON. Temperatures and floor are
/// those of the true plant, from lighting on.
/// </summary>
/// <param name="Name">Rig, winter and rule in one.</param>
/// <param name="Rig">The rig.</param>
/// <param name="Weather">The winter.</param>
/// <param name="Policy">The draw rule, or <see cref="Bound"/>.</param>
/// <param name="HoursBelowFloor">Hours with the active zone below its floor.</param>
/// <param name="UndershootK">Furthest below it, K.</param>
/// <param name="ColdDegreeHours">Degree-hours of the house below its minimum, K·h.</param>
/// <param name="Captured">Share of what the bound avoids that this avoids; null without a bound.</param>
/// <param name="CapturedByCutout">The same for the cut-out on the same rig and winter.</param>
/// <param name="UsefulKWh">House loss coefficient × degree-hours below the set point avoided, kWh.</param>
/// <param name="StalledOnDay">First day on which the heap had gone quiet, or null.</param>
/// <param name="FrostGuardHours">Hours in which the frost guard drew.</param>
/// <param name="PumpStartsPerDay">Starts of the pump a day.</param>
/// <param name="ValveStrokesPerDay">Full strokes of the valve a day.</param>
/// <param name="BandCoverage">Share of the time in which the 95 % band of the estimate holds the true active zone.</param>
/// <param name="BandHalfWidthK">Mean half-width of that band, K.</param>
/// <param name="NetHeatError">Worst error of a day's mean net heat, share of the heat truly made, from day 10 after lighting.</param>
/// <param name="Tonight">How good the evenings' statements were; null when the heap never lit.</param>
/// <param name="Scored">True where the bound avoids 50 K·h or more.</param>
/// <param name="Certificate">Cold degree-hours no plan goes below on this rig in this winter, K·h; null without a bound.</param>
internal sealed record Cell(
    string Name, string Rig, string Weather, string Policy, double HoursBelowFloor, double UndershootK, double ColdDegreeHours,
    double? Captured, double? CapturedByCutout, double? UsefulKWh, double? StalledOnDay, double? FrostGuardHours,
    double? PumpStartsPerDay, double? ValveStrokesPerDay, double? BandCoverage, double? BandHalfWidthK, double? NetHeatError,
    TonightResult? Tonight, bool Scored, double? Certificate = null)
{
    /// <summary>What stands for the draw rule in the bound's own cell.</summary>
    public const string Bound = "bound";
}
