namespace PileController.Units;

/// <summary>Defining constants of customary units in SI. Their products are checked against published values in the tests.</summary>
internal static class Factors
{
    public const decimal Foot = 0.3048m;
    public const decimal Inch = Foot / 12;
    public const decimal CubicFoot = Foot * Foot * Foot;
    public const decimal Litre = 0.001m;
    public const decimal UsGallon = 231 * Inch * Inch * Inch;
    public const decimal ImperialGallon = 4.54609m * Litre;
    public const decimal Pound = 0.45359237m;
    public const decimal Minute = 60;
    public const decimal Hour = 3600;
    public const decimal KelvinPerRankine = 5m / 9;

    /// <summary>The International Table BTU: 4186.8 J/(kg·K) × 1 lb × 1 °F.</summary>
    public const decimal Btu = 1055.05585262m;

    public const decimal UsTherm = 105_480_400m;
    public const decimal StandardGravity = 9.80665m;
    public const decimal Psi = Pound * StandardGravity / (Inch * Inch);
    public const decimal Horsepower = 550 * Foot * Pound * StandardGravity;

    /// <summary>The conventional inch of water, Pa (GNU units).</summary>
    public const decimal InchOfWater = 249.08891m;
}
