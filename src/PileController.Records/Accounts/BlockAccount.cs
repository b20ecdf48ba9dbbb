using PileController.Control.Decisions;

namespace PileController.Records.Accounts;

/// <summary>What the ticks of one block came to. Wall times are labels: order and completeness go by the numbers.</summary>
/// <param name="SettingsHash">The settings it was made with.</param>
/// <param name="FirstSequence">Number of the first tick counted.</param>
/// <param name="LastSequence">Number of the last.</param>
/// <param name="FirstUtcMilliseconds">Wall time of the first tick counted.</param>
/// <param name="MiddleUtcMilliseconds">Wall time of the tick in the middle.</param>
/// <param name="LastUtcMilliseconds">Wall time of the last tick.</param>
/// <param name="Before">Running totals before the first tick; null when the block is counted from its middle on, or they are lost.</param>
/// <param name="After">Running totals after the last.</param>
/// <param name="Figures">What was counted tick by tick; a pump that ran at the first tick counts as one start.</param>
/// <param name="PumpOnFirst">The pump was told to run at the first tick.</param>
/// <param name="PumpOnLast">The pump was told to run at the last tick.</param>
public sealed record BlockAccount(
    string SettingsHash, long FirstSequence, long LastSequence, long FirstUtcMilliseconds, long MiddleUtcMilliseconds,
    long LastUtcMilliseconds, Totals? Before, Totals After, TickFigures Figures, bool PumpOnFirst, bool PumpOnLast);
