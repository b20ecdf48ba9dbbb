using PileController.Control.Decisions;

namespace PileController.Commissioning;

/// <summary>One actuator held by hand while a step lasts.</summary>
/// <param name="Actuator">Which.</param>
/// <param name="Value">0 to 1.</param>
internal sealed record Move(Actuator Actuator, double Value);

/// <summary>What kind of answer a question wants.</summary>
internal enum AnswerKind
{
    /// <summary>A number.</summary>
    Number = 0,

    /// <summary>1 for yes, 0 for no.</summary>
    YesNo,

    /// <summary>Words; may be left empty.</summary>
    Text,
}

/// <summary>What the grower is asked at the end of a step.</summary>
/// <param name="Kind">What kind of answer.</param>
/// <param name="Text">The question.</param>
/// <param name="Unit">Unit of a number, else empty.</param>
/// <param name="Least">Smallest number allowed.</param>
/// <param name="Most">Largest number allowed; longest text in characters.</param>
internal sealed record Question(AnswerKind Kind, string Text, string Unit, double Least, double Most)
{
    /// <summary>Longest answer in words, characters.</summary>
    public const int LongestText = 1000;

    /// <summary>A question for a number.</summary>
    public static Question Number(string text, string unit, double least, double most) => new(AnswerKind.Number, text, unit, least, most);

    /// <summary>A question for yes or no.</summary>
    public static Question YesNo(string text) => new(AnswerKind.YesNo, text, "", 0, 1);

    /// <summary>A question for words.</summary>
    public static Question Words(string text) => new(AnswerKind.Text, text, "", 0, LongestText);

    /// <summary>What is allowed, in words.</summary>
    public string Allowed => Kind switch
    {
        AnswerKind.Number => System.FormattableString.Invariant($"a number from {Least} to {Most} ({Unit})"),
        AnswerKind.YesNo => "yes or no",
        _ => $"up to {LongestText} characters of text",
    };
}

/// <summary>One step of a test: what is said, what moves meanwhile, and when it is over.</summary>
/// <param name="Id">Its name in the trace.</param>
/// <param name="Say">What the grower is told.</param>
internal sealed record Phase(string Id, string Say)
{
    /// <summary>What is held by hand while it lasts.</summary>
    public IReadOnlyList<Move> Moves { get; init; } = [];

    /// <summary>True: it is over when the grower says so. False: when it has seen enough.</summary>
    public bool Asks { get; init; }

    /// <summary>What the grower answers when saying so; null for nothing.</summary>
    public Question? Question { get; init; }

    /// <summary>It lasts this long at least, s.</summary>
    public double LeastSeconds { get; init; }

    /// <summary>It lasts this long at most, s. One that asks and moves something ends the test then.</summary>
    public double MostSeconds { get; init; } = double.PositiveInfinity;

    /// <summary>Whether the looks since it began are enough; null: the least time is.</summary>
    public Func<IReadOnlyList<Look>, bool>? Enough { get; init; }

    /// <summary>How long its moves are held at most, s: a minute longer than it can last.</summary>
    public double HoldSeconds => 60 + (Asks || Enough is not null ? MostSeconds : LeastSeconds);
}

/// <summary>A test as a whole.</summary>
/// <param name="Id">Its name on the command line and on the wire.</param>
/// <param name="Title">What it is called.</param>
/// <param name="Cautions">What hurts people or the rig here.</param>
/// <param name="Phases">Its steps.</param>
/// <param name="Judge">From the trace to what was found. Called only when all steps are over.</param>
internal sealed record Procedure(
    string Id, string Title, IReadOnlyList<string> Cautions, IReadOnlyList<Phase> Phases, Func<Trace, IReadOnlyList<Outcome>> Judge)
{
    /// <summary>What moves in it, for whoever is asked before it begins: "the pump (to 100 %)"; empty when nothing does.</summary>
    public IReadOnlyList<string> Moving =>
    [
        .. Phases.SelectMany(phase => phase.Moves).GroupBy(move => move.Actuator).OrderBy(moves => moves.Key)
            .Select(moves => $"{Name(moves.Key)} ({string.Join(", ", moves.Select(move => Worded(move)).Distinct())})"),
    ];

    /// <summary>The name of an actuator in a sentence.</summary>
    public static string Name(Actuator actuator) => actuator == Actuator.Backup ? "backup heat" : WireName(actuator);

    /// <summary>Its name on the wire.</summary>
    public static string WireName(Actuator actuator) => actuator.ToString().ToLowerInvariant();

    private static string Worded(Move move) => move switch
    {
        { Actuator: Actuator.Valve, Value: 0 } => "shut",
        { Actuator: Actuator.Valve, Value: 1 } => "open",
        { Value: 0 } => "off",
        { Actuator: Actuator.Backup } => "on",
        _ => System.FormattableString.Invariant($"{100 * move.Value:0} %"),
    };
}
