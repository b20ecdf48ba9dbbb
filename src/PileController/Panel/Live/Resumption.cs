using System.Globalization;
using PileController.Service;

namespace PileController.Panel.Live;

/// <summary>Ticks a watcher was not told and will not be.</summary>
/// <param name="After">The last it was told; null where that is no tick of this run.</param>
/// <param name="Before">The first it is told now.</param>
internal sealed record MissedBody(long? After, long Before);

/// <summary>Where a watcher goes on that was cut off. Pure.</summary>
/// <param name="Missed">Ticks it missed that are still kept, in order.</param>
/// <param name="Lost">What it missed that is not, or null for nothing.</param>
/// <param name="After">What it is told next is newer than this.</param>
internal sealed record Resumption(IReadOnlyList<TickNews> Missed, MissedBody? Lost, long After)
{
    // Somebody new has missed nothing, and is told the newest there is.
    private static readonly Resumption Anew = new([], null, long.MinValue);

    /// <summary>Finds where to go on.</summary>
    /// <param name="lastEventId">What the watcher says it was told last; whatever is no number of a tick counts as nothing.</param>
    /// <param name="kept">The ticks that are kept, the oldest first, their numbers without a gap.</param>
    public static Resumption Of(string? lastEventId, IReadOnlyList<TickNews> kept)
    {
        if (!long.TryParse(lastEventId, NumberStyles.None, CultureInfo.InvariantCulture, out long last) || kept.Count == 0)
        {
            return Anew;
        }

        // A number yet to come was told by a run that counted further: a record that was taken away, a demo started anew.
        long newest = kept[^1].Sequence;
        if (last > newest)
        {
            return Anew with { Lost = new MissedBody(null, newest) };
        }

        return last >= kept[0].Sequence - 1
            ? new Resumption([.. kept.Where(news => news.Sequence > last)], null, newest)
            : Anew with { Lost = new MissedBody(last, newest) };
    }
}
