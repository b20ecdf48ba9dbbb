using PileController.Control.Readings;

namespace PileController.Control.Estimation;

/// <summary>Whether the probes in the heap bear out what is believed of it.</summary>
internal static class Corroboration
{
    // What a probe must be thought to lie off to be one of a pair, K: half of what it is doubted for. Their mean must lie off less.
    private const double LeastUnevenK = 0.4;

    // A pair that surprises more is further off than two places of a heap of chips differ from rings of one temperature: the
    // error thought is bounded, since a doubted probe is hardly learned from, its surprise is not. From forty seasons with the
    // heap drawn from its spreads, where 3.2 was the most of such a pair at a day's end; two probes ten kelvin off come to 100.
    private const double MostPairSurprise = 6;

    /// <summary>
    /// Two probes at least must say what was foretold, and more of them than say otherwise. Where the only two that do not lie
    /// off to opposite sides by as much, neither is wrong, and one more is enough: the heap is steeper or flatter between them
    /// than rings can tell, and their mean is what was foretold.
    /// </summary>
    public static bool Holds(HeapBelief belief, RigReadings readings)
    {
        int sound = 0;
        int odd = 0;
        int warm = 0;
        int cool = 0;
        double sumK = 0;
        for (int i = 0; i < HeapBelief.Probes; i++)
        {
            if (!readings.TryGet(ProbeSight.ChannelOf(i), out _))
            {
                continue;
            }

            if (!belief.Doubts(i))
            {
                sound++;
                continue;
            }

            double errorK = belief.Mean[HeapBelief.FirstProbe + i];
            bool may = Math.Abs(errorK) >= LeastUnevenK && belief.Surprise[i] <= MostPairSurprise;
            odd++;
            warm += may && errorK > 0 ? 1 : 0;
            cool += may && errorK < 0 ? 1 : 0;
            sumK += errorK;
        }

        bool pair = odd == 2 && warm == 1 && cool == 1 && Math.Abs(sumK / 2) <= LeastUnevenK;
        return (sound >= 2 && sound > odd) || (sound >= 1 && pair);
    }
}
