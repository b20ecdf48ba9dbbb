namespace PileController.Commissioning.Procedures;

/// <summary>The end of the season, step by step. Nothing moves.</summary>
internal static class WindDown
{
    private static readonly (string Id, string Say)[] List =
    [
        ("last-look", "Look at the ledger's season once more, and note in the end what you would do otherwise. Then stop drawing: lock the outputs off at the page, or stop the service."),
        ("power", "Take the supply off pump, blower and backup heat at their isolators. A licensed electrician does what is on mains."),
        ("drain", "Drain the loop at its lowest point with the highest vent open; catch antifreeze, it poisons animals. Leave drains and vents open."),
        ("dry", "Blow the lines dry. Open the pump, rinse and dry it, turn it by hand; store it above freezing. Empty and dry filter and tank."),
        ("store", "Label each probe with what it told, dry and coil it. Cover duct openings against mice. Keep the battery charged, somewhere cool."),
        ("heap", "Open the heap from its rim inwards, never under an overhang; wet it first against spores, and wear a mask. Leave a hot one alone for another week."),
    ];

    /// <summary>The checklist.</summary>
    public static Procedure Of() => new(
        "wind-down", "Wind down for the summer",
        ["Water in the loop may still scald.", "An opened heap gives off carbon dioxide, ammonia and spores: never alone, never in a pit."],
        [
            .. List.Select(item => new Phase(item.Id, item.Say) { Asks = true, Question = Question.YesNo("Done?") }),
            new("weight", "Weigh what comes out, by trailer or bucket, or guess it.") { Asks = true, Question = Question.Number("How heavy is the heap now, wet? 0 when it stays.", "kg", 0, 1_000_000) },
            new("notes", "What is worth knowing next autumn?") { Asks = true, Question = Question.Words("Your notes, for the ledger.") },
        ],
        trace => [Judge(trace)]);

    private static Outcome Judge(Trace trace)
    {
        string[] open = [.. List.Where(item => trace[item.Id].Figure != 1).Select(item => item.Id)];
        double kilograms = trace["weight"].Figure!.Value;
        string weight = kilograms > 0 ? $"the heap weighs {Wording.Number(kilograms, 0)} kg" : "the heap stays";
        return new Outcome("windDown", open.Length == 0 ? Soundness.Sound : Soundness.Doubtful, open.Length == 0
            ? $"All {List.Length} steps are done; {weight}."
            : $"Not done yet: {Wording.All(open)}; {weight}.")
        {
            Figure = kilograms > 0 ? kilograms : null,
            Unit = kilograms > 0 ? "kg" : "",
        };
    }
}
