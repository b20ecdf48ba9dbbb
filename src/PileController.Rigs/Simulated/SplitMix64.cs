namespace PileController.Rigs.Simulated;

/// <summary>
/// A random stream that can be entered at any place: the n-th number is a function of the seed and n alone, so a
/// run that is taken up half way goes on with the same bits.
/// </summary>
/// <remarks>
/// Steele, Lea, Flood, "Fast splittable pseudorandom number generators", OOPSLA 2014 (constants from memory).
/// </remarks>
internal static class SplitMix64
{
    private const ulong Step = 0x9E3779B97F4A7C15;

    // Standard deviation of the sum of four uniform numbers of width 1: the square root of 4/12.
    private const double SumSigma = 0.57735026918962576;

    /// <summary>Largest number <see cref="NearNormal"/> gives, in standard deviations.</summary>
    public const double MostSigmas = 2 / SumSigma;

    /// <summary>The n-th number of the stream of a seed, counted from 0.</summary>
    public static ulong At(ulong seed, ulong n)
    {
        unchecked
        {
            ulong z = seed + ((n + 1) * Step);
            z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9;
            z = (z ^ (z >> 27)) * 0x94D049BB133111EB;
            return z ^ (z >> 31);
        }
    }

    /// <summary>A number spread evenly over -1 to 1.</summary>
    public static double Even(ulong bits) => ((bits >> 11) * (2.0 / (1UL << 53))) - 1;

    /// <summary>
    /// A number of mean 0 and standard deviation 1, near enough normal for a probe's noise: the sum of the four
    /// 16-bit parts of <paramref name="bits"/>. No logarithm and no cosine, and it is bounded, as a real converter is.
    /// </summary>
    public static double NearNormal(ulong bits)
    {
        uint sum = (uint)(bits & 0xFFFF) + (uint)((bits >> 16) & 0xFFFF) + (uint)((bits >> 32) & 0xFFFF) + (uint)(bits >> 48);

        // Each part is 0 to 65535 with mean 32767.5.
        return (sum - (4 * 32767.5)) * (1 / (65536 * SumSigma));
    }
}
