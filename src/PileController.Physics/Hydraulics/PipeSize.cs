namespace PileController.Physics.Hydraulics;

/// <summary>A pipe as it is sold.</summary>
/// <param name="Name">Nominal size and kind, as in "1/2 in PEX".</param>
/// <param name="OuterDiameterM">Outside diameter, m.</param>
/// <param name="InnerDiameterM">Average bore, m.</param>
/// <param name="WallWPerMK">Conductivity of the wall, W/(m·K) (0.41 for cross-linked polyethylene, 390 for copper, both from memory).</param>
public sealed record PipeSize(string Name, double OuterDiameterM, double InnerDiameterM, double WallWPerMK)
{
    private const double Inch = 0.0254;
    private const double PexWPerMK = 0.41;
    private const double CopperWPerMK = 390;

    /// <summary>
    /// The sizes known by name. PEX: SDR-9, average bores after ASTM F876/F877 (3/8 in from memory).
    /// Copper: type L, from memory.
    /// </summary>
    public static IReadOnlyList<PipeSize> All { get; } =
    [
        Inches("3/8 in PEX", 0.500, 0.350, PexWPerMK),
        Inches("1/2 in PEX", 0.625, 0.475, PexWPerMK),
        Inches("5/8 in PEX", 0.750, 0.574, PexWPerMK),
        Inches("3/4 in PEX", 0.875, 0.671, PexWPerMK),
        Inches("1 in PEX", 1.125, 0.863, PexWPerMK),
        Inches("3/8 in copper", 0.500, 0.430, CopperWPerMK),
        Inches("1/2 in copper", 0.625, 0.545, CopperWPerMK),
        Inches("3/4 in copper", 0.875, 0.785, CopperWPerMK),
        Inches("1 in copper", 1.125, 1.025, CopperWPerMK),
    ];

    /// <summary>The size of a name, letter case aside.</summary>
    /// <param name="name">One of the names in <see cref="All"/>.</param>
    /// <exception cref="ArgumentException">No such size; the message lists those there are.</exception>
    public static PipeSize Named(string name) =>
        All.FirstOrDefault(size => size.Name.Equals(name, StringComparison.OrdinalIgnoreCase))
        ?? throw new ArgumentException($"No pipe size \"{name}\"; known are {string.Join(", ", All.Select(size => size.Name))}.", nameof(name));

    private static PipeSize Inches(string name, double outer, double inner, double wallWPerMK) => new(name, outer * Inch, inner * Inch, wallWPerMK);
}
