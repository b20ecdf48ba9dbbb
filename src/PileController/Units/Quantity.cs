using System.Diagnostics.CodeAnalysis;
using System.Globalization;

namespace PileController.Units;

/// <summary>A number with its unit, as a person wrote it.</summary>
/// <param name="Number">The number, magnitude at most 1e12; digits beyond the 28th decimal are lost.</param>
/// <param name="Unit">Its unit.</param>
public readonly record struct Quantity(decimal Number, Unit Unit)
{
    private const decimal LargestNumber = 1e12m;

    /// <summary>The same quantity counted in <paramref name="unit"/>, rounded once.</summary>
    /// <exception cref="ArgumentException"><paramref name="unit"/> is of another dimension.</exception>
    public double In(Unit unit)
    {
        if (unit.Dimension != Unit.Dimension)
        {
            throw new ArgumentException($"Cannot count {Unit.Symbol} in {unit.Symbol}.", nameof(unit));
        }

        decimal number = unit.Symbol == Unit.Symbol
            ? Number
            : ((Number + Unit.Shift) * Unit.Scale / unit.Scale) - unit.Shift;

        // The cast of a long decimal may be one bit off; reading its digits is not.
        return double.Parse(number.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
    }

    /// <summary>The quantity in the coherent SI unit (temperatures in kelvin).</summary>
    public double Si => (double)((Number + Unit.Shift) * Unit.Scale);

    /// <summary>A stored number as a quantity in another unit, such that <see cref="In"/> gives the same number back.</summary>
    /// <param name="value">The number, magnitude at most 1e12.</param>
    /// <param name="stored">Its unit.</param>
    /// <param name="written">The unit wanted, of the same dimension.</param>
    /// <exception cref="OverflowException"><paramref name="value"/> is too large or not a number.</exception>
    public static Quantity Exactly(double value, Unit stored, Unit written)
    {
        // The shortest digits that read back as the same double; a cast would keep only fifteen of them.
        decimal number = decimal.Parse(
            value.ToString("R", CultureInfo.InvariantCulture), NumberStyles.Float, CultureInfo.InvariantCulture);
        if (stored.Symbol == written.Symbol)
        {
            return new Quantity(number, written);
        }

        Quantity full = new(((number + stored.Shift) * stored.Scale / written.Scale) - written.Shift, written);
        Quantity tidy = new(Rounded(full.Number), written);
        return tidy.In(stored) == value ? tidy : full;
    }

    /// <summary>Reads a quantity of the dimension expected: "4 L/min", "120 F", "10 short ton", "62 m²".</summary>
    /// <param name="text">What the person wrote.</param>
    /// <param name="expected">The dimension it must have.</param>
    /// <param name="quantity">The quantity read.</param>
    /// <param name="problem">What is wrong and what would be right, without the text given; null when all is well.</param>
    public static bool TryParse(
        string text, Dimension expected, out Quantity quantity, [NotNullWhen(false)] out string? problem)
    {
        quantity = default;
        DimensionInfo info = DimensionTable.Of(expected);
        string likeThis = $"for example \"{info.Example}\"";
        (string digits, string written) = QuantityText.Split(text);
        if (digits.Length == 0)
        {
            problem = $"a number with its unit, {likeThis}";
            return false;
        }

        if (!decimal.TryParse(digits, NumberStyles.Float, CultureInfo.InvariantCulture, out decimal number)
            || Math.Abs(number) > LargestNumber)
        {
            problem = $"a plain number with a decimal point, at most 1e12, then its unit, {likeThis}";
            return false;
        }

        if (written.Length == 0)
        {
            problem = $"{info.Name} needs its unit, {likeThis}";
            return false;
        }

        IReadOnlyList<Unit> known = UnitNames.Find(written);
        Unit? unit = known.FirstOrDefault(u => u.Dimension == expected);
        problem = unit is not null ? null
            : known.Count > 0
                ? $"{info.Name} is expected, {likeThis}; \"{written}\" is the unit of {DimensionTable.Of(known[0].Dimension).Name}"
                : $"unknown unit \"{written}\"{Hint(written, expected)}; {info.Name} is written {likeThis}";
        quantity = unit is null ? default : new Quantity(number, unit);
        return problem is null;
    }

    /// <summary>The number and the unit's symbol.</summary>
    public override string ToString() =>
        $"{Number.ToString(Number != 0 && Math.Abs(Number) < 1e-4m ? "0.############################e-0" : "G29", CultureInfo.InvariantCulture)} {Unit.Symbol}";

    /// <summary>To fifteen digits: 144 rather than 143.99999999999999999999998848.</summary>
    private static decimal Rounded(decimal number) => decimal.Parse(
        number.ToString("G15", CultureInfo.InvariantCulture), NumberStyles.Float, CultureInfo.InvariantCulture);

    private static string Hint(string written, Dimension expected) =>
        UnitNames.NearestTo(written, expected) is string near ? $", the nearest known is \"{near}\"" : "";
}
