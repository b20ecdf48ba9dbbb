using PileController.Physics.Recipes;
using PileController.Units;

namespace PileController.Plans.Recipes;

/// <summary>Says which published band a blend misses and what would mend it.</summary>
internal static class MendingText
{
    /// <summary>What was found and what is allowed.</summary>
    public static string Miss(Mending missed) => missed.Band.Kind switch
    {
        "moisture" => $"{100 * missed.Value:F0} % water, published {100 * missed.Band.Least:F0} to {100 * missed.Band.Most:F0} %",
        "carbonToNitrogen" => $"C:N {missed.Value:F0}, published {missed.Band.Least:F0} to {missed.Band.Most:F0}",
        "bulkDensity" => $"{missed.Value:F0} kg/m3 once watered, published at most {missed.Band.Most:F0} kg/m3",
        _ => $"{100 * missed.Value:F0} % air once watered, published at least {100 * missed.Band.Least:F0} %",
    };

    /// <summary>What would mend it.</summary>
    public static string Mend(Mending missed)
    {
        bool low = missed.Value < missed.Band.Least;
        if (missed.Band.Kind == "moisture" && low)
        {
            return $"more water: a targetMoisture of {100 * missed.Band.Least:F0} % or more";
        }

        if (missed.More is { } more)
        {
            return $"{Show.Both(s => Show.Mass(missed.MoreKg, s))} more of {more.Name}";
        }

        return missed.Band.Kind switch
        {
            "moisture" => "something dry, as none of these is dry enough: dry chips, straw",
            "carbonToNitrogen" when low => "something woody, as none of these has enough carbon: chips, straw, dry leaves",
            "carbonToNitrogen" => "something rich, as none of these has enough nitrogen: manure, fresh greens",
            _ => "something coarse, as none of these is loose enough: coarse chips",
        };
    }
}
