using PileController.Control.Decisions;
using PileController.Control.Interlocks;

namespace PileController.Control.Tests.Properties;

/// <summary>One tick of a scenario and what came of it.</summary>
/// <param name="Settings">What the controller is told.</param>
/// <param name="Index">Which tick, from 0.</param>
/// <param name="Count">How many ticks the scenario has.</param>
/// <param name="Before">The memory it began with; after a restart what was kept over it.</param>
/// <param name="Move">What was said and asked.</param>
/// <param name="Decision">What was decided.</param>
/// <param name="After">The memory it handed on.</param>
internal sealed record Tick(
    ControlSettings Settings, int Index, int Count, Memory Before, Move Move, Decision Decision, Memory After)
{
    public bool IsLast => Index == Count - 1;

    public long Now => Decision.At.MonotonicMilliseconds;

    public Outputs Told => Decision.Outputs;

    /// <summary>Whether an interlock acts or has tripped.</summary>
    public bool Acts(string id) =>
        Decision.Verdicts[InterlockTable.IndexOf(id)] is Verdict.Acting or Verdict.Latched;
}
