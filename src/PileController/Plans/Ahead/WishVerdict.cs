using PileController.Physics.Fluids;
using PileController.Units;

namespace PileController.Plans.Ahead;

/// <summary>A wish for hot water beside what the heap holds.</summary>
/// <param name="WishWatts">The heat it asks for all winter.</param>
/// <param name="WishKWh">The same over the season.</param>
/// <param name="BeyondMass">True when it asks for more than nine tenths of the drawn heaps hold in their degradable mass.</param>
/// <param name="Metric">The verdict in °C, kW, L.</param>
/// <param name="Us">The verdict in °F, BTU/h, gal.</param>
internal sealed record WishVerdict(double WishWatts, double WishKWh, bool BeyondMass, string Metric, string Us)
{
    /// <summary>Judges a wish; null when there is none.</summary>
    /// <param name="wish">The wish.</param>
    /// <param name="ahead">What the seasons came to.</param>
    public static WishVerdict? Of(PlanWish wish, AheadResult ahead)
    {
        if (wish.FlowLitresPerMinute <= 0)
        {
            return null;
        }

        double watts = Water.DrawWatts(wish.FlowLitresPerMinute, wish.FromC, wish.ToC, wish.FromC);
        double kWh = watts * 24 * ahead.Days / 1000;
        bool beyond = kWh > ahead.MostHeatKWh.P90;
        string Say(UnitSystem system) =>
            $"{Show.WaterFlow(wish.FlowLitresPerMinute, system)} heated from {Show.Temperature(wish.FromC, system)} to "
            + $"{Show.Temperature(wish.ToC, system)} all winter is {Kilo(watts, system)}; your heap makes "
            + $"{Kilo(ahead.GeneratedWatts, system)} and gives {Kilo(ahead.DrawnWatts, system)} of that (P10 to P90). "
            + (beyond
                ? $"Burnt to the last degradable kilogram it would be {Kilo(MassWatts(ahead), system)}: the wish is beyond what its mass holds."
                : watts > ahead.DrawnWatts.P90
                    ? $"Its degradable mass would allow {Kilo(MassWatts(ahead), system)}, but it neither burns in one season nor comes out by this coil."
                    : "The wish is within it.");
        return new WishVerdict(watts, kWh, beyond, Say(UnitSystem.Metric), Say(UnitSystem.Us));
    }

    private static Percentiles MassWatts(AheadResult ahead) => ahead.MostHeatKWh.Select(kWh => kWh * 1000 / (24 * ahead.Days));

    private static string Kilo(Percentiles watts, UnitSystem system) => watts is { P10: { } low, P90: { } high }
        ? $"{Kilo(low, system).Split(' ')[0]}–{Kilo(high, system)}"
        : "—";

    private static string Kilo(double watts, UnitSystem system) => system == UnitSystem.Metric
        ? FormattableString.Invariant($"{watts / 1000:0.##} kW")
        : Show.Power(watts, system);
}
