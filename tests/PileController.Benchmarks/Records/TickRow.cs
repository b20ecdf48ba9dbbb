using PileController.Control.Decisions;
using PileController.Control.Readings;
using PileController.Records;
using PileController.Records.Queries;

namespace PileController.Benchmarks.Records;

/// <summary>A tick as a plain row: what the record keeps as series, in the same whole numbers.</summary>
internal static class TickRow
{
    /// <summary>How many numbers a row has.</summary>
    public static int Width => RecordSeries.All.Count;

    /// <summary>The numbers, in the order of <see cref="RecordSeries.All"/>; null where there is none to be believed.</summary>
    public static long?[] Of(TickEntry tick)
    {
        Decision decision = tick.Decision;
        long?[] row = new long?[Width];
        int at = 0;
        foreach (ref readonly Reading reading in decision.Readings.AsSpan())
        {
            row[at++] = reading.IsGood ? reading.Quanta : null;
        }

        foreach (DecisionFigure figure in DecisionSeries.All)
        {
            row[at++] = (long)Math.Round(figure.Of(decision) * figure.PerUnit);
        }

        row[at] = (long)decision.Mode;
        return row;
    }
}
