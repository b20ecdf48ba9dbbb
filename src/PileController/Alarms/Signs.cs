namespace PileController.Alarms;

/// <summary>Signs that many rows are made of.</summary>
internal static class Signs
{
    /// <summary>A measure above its limit; it ends a dead-band below it. Unknown measures tell nothing.</summary>
    public static AlarmSign Above(Func<AlarmFacts, double?> measure, double limit, double deadBand) =>
        (facts, standing) => measure(facts) is { } value ? value > (standing ? limit - deadBand : limit) : null;

    /// <summary>A measure below its limit; it ends a dead-band above it. Unknown measures tell nothing.</summary>
    public static AlarmSign Below(Func<AlarmFacts, double?> measure, double limit, double deadBand) =>
        (facts, standing) => measure(facts) is { } value ? value < (standing ? limit + deadBand : limit) : null;

    /// <summary>A yes or no.</summary>
    public static AlarmSign When(Func<AlarmFacts, bool?> holds) => (facts, _) => holds(facts);
}
