using PileController.Records.Packing;

namespace PileController.Records.Summaries;

/// <summary>
/// One series over one row of ticks, exact: all in whole quanta. Ticks of the row that are not good count in the row
/// and not here.
/// </summary>
/// <param name="Good">How many ticks had a value that may be believed.</param>
/// <param name="Least">Smallest of them; 0 when there is none.</param>
/// <param name="Most">Largest of them; 0 when there is none.</param>
/// <param name="Sum">Sum of them. A day of the largest figures fits.</param>
internal readonly record struct SummaryCell(long Good, long Least, long Most, long Sum)
{
    /// <summary>With one more tick.</summary>
    public SummaryCell With(long value) =>
        value == TickColumns.NoFigure ? this : Plus(new SummaryCell(1, value, value, value));

    /// <summary>With the ticks of another.</summary>
    public SummaryCell Plus(SummaryCell other)
    {
        if (Good == 0 || other.Good == 0)
        {
            return Good == 0 ? other : this;
        }

        return new SummaryCell(
            Good + other.Good, Math.Min(Least, other.Least), Math.Max(Most, other.Most), Sum + other.Sum);
    }
}
