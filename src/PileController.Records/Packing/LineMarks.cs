namespace PileController.Records.Packing;

/// <summary>
/// Which modes and curbs occur among some decision lines, a bit for each: tells, without their being opened, that a question
/// for a rare one finds none of them.
/// </summary>
/// <param name="Modes">Bit n: the mode of number n.</param>
/// <param name="Curbs">Bit n: the curb of number n.</param>
internal readonly record struct LineMarks(long Modes, long Curbs)
{
    /// <summary>Of lines that nothing is known of.</summary>
    public static LineMarks Unknown => new(-1, -1);

    /// <summary>Of some lines.</summary>
    public static LineMarks Of(IEnumerable<DecisionLine> lines) => lines.Aggregate(
        default(LineMarks), (marks, line) => new LineMarks(marks.Modes | Bit((int)line.Mode), marks.Curbs | Bit((int)line.Curb)));

    /// <summary>Whether some line may be one that is asked for.</summary>
    public bool MayHold(DecisionAsk ask) =>
        (ask.Mode is not { } mode || (Modes & Bit((int)mode)) != 0) && (ask.Curb is not { } curb || (Curbs & Bit((int)curb)) != 0);

    // Numbers past the bits share the last one.
    private static long Bit(int number) => 1L << Math.Clamp(number, 0, 63);
}
