using PileController.Control.Readings;

namespace PileController.Control.Estimation;

/// <summary>Whether the probes in the heap bear out what is believed of it.</summary>
internal static class Corroboration
{
    // Two places of a heap of chips may differ from rings of one temperature by about this much each, K (common practice, no
    // source; 1.0 at most in seasons with the heap drawn from its spreads). A probe further off is wrong itself.
    private const double MostUnevenK = 2;

    // What a probe must lie off to be one of a pair, K: half of what it is doubted for.
    private const double LeastUnevenK = 0.4;

    /// <summary>
    /// Two probes at least must say what was foretold, and more of them than say otherwise. Of two that lie off to opposite
    /// sides neither is wrong: the heap is steeper or flatter between them than rings can tell, and their mean is what was foretold.
    /// </summary>
    public static bool Holds(HeapBelief belief, RigReadings readings)
    {
        int sound = 0;
        int odd = 0;
        int warm = 0;
        int cool = 0;
        for (int i = 0; i < HeapBelief.Probes; i++)
        {
            if (!readings.TryGet(ProbeSight.ChannelOf(i), out _))
            {
                continue;
            }

            double errorK = belief.Mean[HeapBelief.FirstProbe + i];
            bool uneven = Math.Abs(errorK) is >= LeastUnevenK and <= MostUnevenK;
            if (!belief.Doubts(i))
            {
                sound++;
            }
            else if (!uneven)
            {
                odd++;
            }
            else if (errorK > 0)
            {
                warm++;
            }
            else
            {
                cool++;
            }
        }

        int pairs = Math.Min(warm, cool);
        return sound + pairs >= 2 && sound + pairs > odd + Math.Abs(warm - cool);
    }
}
