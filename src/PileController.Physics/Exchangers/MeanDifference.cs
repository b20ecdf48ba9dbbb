namespace PileController.Physics.Exchangers;

/// <summary>Mean temperature difference along an exchanger.</summary>
public static class MeanDifference
{
    /// <summary>Logarithmic mean of the differences at the two ends, K; their common value when they are alike, 0 when one is 0.</summary>
    /// <param name="oneEndK">Difference at one end, K, 0 or more.</param>
    /// <param name="otherEndK">Difference at the other end, K, 0 or more.</param>
    public static double LogMeanK(double oneEndK, double otherEndK)
    {
        Require.NotNegative(oneEndK, "K");
        Require.NotNegative(otherEndK, "K");
        if (oneEndK == 0 || otherEndK == 0)
        {
            return 0;
        }

        double excess = (oneEndK - otherEndK) / otherEndK;
        // Near equal ends (a − b)/ln(a/b) is 0/0; b (1 + e/2 − e²/12) is its series there.
        return Math.Abs(excess) < 1e-5
            ? otherEndK * (1 + (excess * (0.5 - (excess / 12))))
            : (oneEndK - otherEndK) / Portable.Log(oneEndK / otherEndK);
    }
}
