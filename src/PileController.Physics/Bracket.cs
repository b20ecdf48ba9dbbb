namespace PileController.Physics;

/// <summary>Root of a continuous function between two points where its signs differ.</summary>
internal static class Bracket
{
    private const int MostSteps = 200;

    /// <summary>
    /// False position with the Illinois weighting, falling back to halving: always inside the bracket, so it cannot run away.
    /// When the function keeps one sign, the end where it is nearer to zero.
    /// </summary>
    public static double Solve(Func<double, double> function, double low, double high, double tolerance)
    {
        double atLow = function(low);
        double atHigh = function(high);
        if (Math.Sign(atLow) == Math.Sign(atHigh) || atLow == 0 || atHigh == 0)
        {
            return Math.Abs(atLow) <= Math.Abs(atHigh) ? low : high;
        }

        int side = 0;
        for (int step = 0; step < MostSteps && high - low > tolerance; step++)
        {
            // Every third step halves the bracket, so a flat function costs no more than three times a bisection.
            double guess = step % 3 == 2 ? 0.5 * (low + high) : low + ((high - low) * atLow / (atLow - atHigh));
            double value = function(guess);
            if (value == 0)
            {
                return guess;
            }

            if (Math.Sign(value) == Math.Sign(atLow))
            {
                (low, atLow, atHigh, side) = (guess, value, side < 0 ? 0.5 * atHigh : atHigh, -1);
            }
            else
            {
                (high, atHigh, atLow, side) = (guess, value, side > 0 ? 0.5 * atLow : atLow, 1);
            }
        }

        return 0.5 * (low + high);
    }
}
