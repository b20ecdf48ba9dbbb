using PileController.Control;
using PileController.Control.Decisions;
using PileController.Control.Readings;
using PileController.Records;

namespace PileController.Service;

/// <summary>One tick as it is told to those who watch.</summary>
/// <param name="Decision">What was decided.</param>
/// <param name="Raw">What the rig said.</param>
/// <param name="Record">How the record was after the tick.</param>
/// <param name="After">What the tick handed on.</param>
public sealed record TickNews(Decision Decision, RigReadings Raw, RecordHealth Record, Memory After)
{
    /// <summary>Number of the tick.</summary>
    public long Sequence => Decision.Sequence;
}
