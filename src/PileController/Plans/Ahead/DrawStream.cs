namespace PileController.Plans.Ahead;

/// <summary>
/// Random numbers of one season: each is a function of the seed, the season's number and its own place alone, so a
/// season is the same however many others there are and whichever core it runs on.
/// </summary>
/// <param name="seed">Seed of the whole plan.</param>
/// <param name="season">Number of the season, from 0.</param>
internal readonly struct DrawStream(long seed, int season)
{
    private const double PerStep = 1.0 / (1UL << 53);

    // Standard deviation of the sum of twelve even numbers from 0 to 1 is 1: near enough normal, and bounded at six.
    private const int Parts = 12;

    /// <summary>An even number from 0 (inclusive) to 1 (exclusive).</summary>
    /// <param name="place">Which number, from 0.</param>
    public double Even(int place) => (Bits(place) >> 11) * PerStep;

    /// <summary>A number of mean 0 and standard deviation 1, never beyond ±6.</summary>
    /// <param name="quantity">Which number, from 0.</param>
    public double Normal(int quantity)
    {
        double sum = -0.5 * Parts;
        for (int i = 0; i < Parts; i++)
        {
            sum += Even((quantity * Parts) + i);
        }

        return sum;
    }

    /// <summary>A whole number from 0 to 2^31 − 1.</summary>
    /// <param name="place">Which number, from 0; numbers of <see cref="Normal"/> take twelve places each.</param>
    public int Whole(int place) => (int)(Bits(place) >> 33);

    // Two rounds of a 64-bit mix (multiply and fold the high half back): every bit of seed, season and place reaches
    // every bit of the result.
    private ulong Bits(int place)
    {
        unchecked
        {
            ulong key = Mix(((ulong)seed * 0xD1342543DE82EF95) ^ Mix((ulong)season + 0x9E3779B97F4A7C15));
            return Mix(key + ((ulong)place * 0x9E3779B97F4A7C15));
        }
    }

    private static ulong Mix(ulong x)
    {
        unchecked
        {
            x = (x ^ (x >> 32)) * 0xD6E8FEB86659FD93;
            x = (x ^ (x >> 32)) * 0xD6E8FEB86659FD93;
            return x ^ (x >> 32);
        }
    }
}
