namespace PileController.Units;

/// <summary>Guesses what a person meant by a word that is not known.</summary>
internal static class Nearest
{
    /// <summary>
    /// The candidate fewest letters away, ignoring case; null when even the best differs in more than half of the
    /// letters, because a guess that far off would mislead.
    /// </summary>
    public static T? Of<T>(string given, IEnumerable<T> candidates, Func<T, string> name)
        where T : class
    {
        T? best = null;
        int fewest = int.MaxValue;
        foreach (T candidate in candidates)
        {
            string known = name(candidate);
            int distance = Distance(given.ToUpperInvariant(), known.ToUpperInvariant());
            if (distance < fewest && 2 * distance <= Math.Max(given.Length, known.Length))
            {
                (best, fewest) = (candidate, distance);
            }
        }

        return best;
    }

    /// <summary>The word fewest letters away, or null.</summary>
    public static string? Of(string given, IEnumerable<string> words) => Of(given, words, w => w);

    /// <summary>Letters to insert, drop or change to come from one word to the other.</summary>
    private static int Distance(string from, string to)
    {
        int[] row = [.. Enumerable.Range(0, to.Length + 1)];
        for (int i = 1; i <= from.Length; i++)
        {
            int diagonal = row[0];
            row[0] = i;
            for (int j = 1; j <= to.Length; j++)
            {
                int change = diagonal + (from[i - 1] == to[j - 1] ? 0 : 1);
                diagonal = row[j];
                row[j] = Math.Min(change, Math.Min(row[j], row[j - 1]) + 1);
            }
        }

        return row[^1];
    }
}
