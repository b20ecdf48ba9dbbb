using PileController.Units;

namespace PileController.Plans.Sketch;

/// <summary>Makes sentences in both unit systems out of one way of writing them.</summary>
internal static class Say
{
    /// <summary>A change that brings less than this share of the heap's mean draw is not worth its trouble.</summary>
    public const double WorthShare = 0.03;

    public const string LocalCodes = "Local codes and licensed trades decide.";

    public static PlanWords Both(string kind, Func<UnitSystem, string> words, double? watts = null, bool worth = true) =>
        new(kind, words(UnitSystem.Metric), words(UnitSystem.Us), watts, worth);

    /// <summary>Whether a gain is worth having.</summary>
    public static bool IsWorth(double watts, double ofWatts) => watts >= WorthShare * Math.Max(1, ofWatts);

    /// <summary>A caution; it always ends by saying who decides.</summary>
    public static PlanWords Caution(string kind, Func<UnitSystem, string> words) =>
        Both(kind, units => $"{words(units)} {LocalCodes}");

    /// <summary>"adds 310 W", "costs 12 W", "changes nothing".</summary>
    public static string Gain(double watts, UnitSystem units) => Gain(watts, units, "s");

    /// <summary>The same after a subject in the plural: "add 310 W".</summary>
    public static string Gains(double watts, UnitSystem units) => Gain(watts, units, "");

    /// <summary>Whether a gain is worth having, as the end of a sentence.</summary>
    public static string Worth(double watts, double ofWatts) => IsWorth(watts, ofWatts) ? "" : ": not worth it";

    private static string Gain(double watts, UnitSystem units, string ending) => Math.Abs(watts) < 0.5
        ? $"change{ending} nothing"
        : $"{(watts > 0 ? "add" : "cost")}{ending} {Show.Power(Math.Abs(watts), units)}";
}
