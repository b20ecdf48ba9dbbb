namespace PileController.Records.Accounts;

/// <summary>What is counted tick by tick, beside the running totals. Two stretches add up by <see cref="Plus"/>.</summary>
/// <param name="Ticks">How many ticks were recorded.</param>
/// <param name="RecordedSeconds">How long they lasted, s.</param>
/// <param name="RunningSeconds">Water moved or was told to, s.</param>
/// <param name="InferredSeconds">Of these: flow, supply or return was not measured, so the heat is inferred, s.</param>
/// <param name="BelowFloorSeconds">The heap had lit and its active zone was below the floor, s.</param>
/// <param name="FrostGuardSeconds">The mode was the frost guard, s.</param>
/// <param name="BorneSeconds">The heap could bear a draw, s.</param>
/// <param name="PumpStarts">How often the pump started.</param>
/// <param name="Trips">Ticks at which an interlock tripped.</param>
/// <param name="NetJoules">Heat made less heat lost by the heap itself, as estimated, J.</param>
/// <param name="NetSeconds">How long that estimate was a number, s.</param>
/// <param name="NightSeconds">Night (local midnight to 09:00) with a house reading that may be believed, s.</param>
/// <param name="NightBelowMinimumSeconds">Of these: the house was below its minimum, s.</param>
/// <param name="NightLeastHouseCelsius">Least house air of the night, °C; null without a reading.</param>
/// <param name="NightLeastOutsideCelsius">Least air outside of the night, °C; null without a reading.</param>
public readonly record struct TickFigures(
    long Ticks, double RecordedSeconds, double RunningSeconds, double InferredSeconds, double BelowFloorSeconds,
    double FrostGuardSeconds, double BorneSeconds, int PumpStarts, int Trips, double NetJoules, double NetSeconds,
    double NightSeconds, double NightBelowMinimumSeconds, double? NightLeastHouseCelsius, double? NightLeastOutsideCelsius)
{
    /// <summary>Both together.</summary>
    public TickFigures Plus(in TickFigures other) => new(
        Ticks + other.Ticks, RecordedSeconds + other.RecordedSeconds, RunningSeconds + other.RunningSeconds,
        InferredSeconds + other.InferredSeconds, BelowFloorSeconds + other.BelowFloorSeconds,
        FrostGuardSeconds + other.FrostGuardSeconds, BorneSeconds + other.BorneSeconds, PumpStarts + other.PumpStarts,
        Trips + other.Trips, NetJoules + other.NetJoules, NetSeconds + other.NetSeconds, NightSeconds + other.NightSeconds,
        NightBelowMinimumSeconds + other.NightBelowMinimumSeconds,
        Least(NightLeastHouseCelsius, other.NightLeastHouseCelsius), Least(NightLeastOutsideCelsius, other.NightLeastOutsideCelsius));

    private static double? Least(double? one, double? other) => one is { } a && other is { } b ? Math.Min(a, b) : one ?? other;
}
