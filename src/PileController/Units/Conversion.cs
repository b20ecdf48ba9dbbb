namespace PileController.Units;

/// <summary>Turns stored numbers from one unit into another.</summary>
public static class Conversion
{
    /// <summary>
    /// <paramref name="value"/> counted in <paramref name="to"/> instead of <paramref name="from"/>, good to a few
    /// units in the last place.
    /// </summary>
    /// <exception cref="ArgumentException">The units are of different dimensions.</exception>
    public static double Of(double value, Unit from, Unit to)
    {
        if (from.Dimension != to.Dimension)
        {
            throw new ArgumentException($"Cannot count {from.Symbol} in {to.Symbol}.", nameof(to));
        }

        return ((value + (double)from.Shift) * (double)(from.Scale / to.Scale)) - (double)to.Shift;
    }
}
