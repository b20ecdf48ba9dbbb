using System.Runtime.CompilerServices;
using System.Text.Json;
using PileController.Panel.Now;
using PileController.Service;

namespace PileController.Panel.Live;

/// <summary>The text of an event and of the page's first look, made once a tick however many watch.</summary>
/// <threadsafety>Safe for use by several threads; two may at worst both make the same text.</threadsafety>
internal sealed class NowText(NowReport report)
{
    // A text goes with its tick: as long as the tick is kept, a hundred watchers who all come back ask for the same few.
    private readonly ConditionalWeakTable<TickNews, Entry> _made = [];

    /// <summary>The text of one tick. A tick told some time ago says so.</summary>
    public string Of(TickNews news) => EntryOf(news).Text;

    /// <summary>One tick and its text.</summary>
    public (NowBody Body, string Text) Both(TickNews news)
    {
        Entry entry = EntryOf(news);
        return (entry.Body, entry.Text);
    }

    private Entry EntryOf(TickNews news)
    {
        if (_made.TryGetValue(news, out Entry? entry) && entry.Body.NewsAgeSeconds + 1 > report.AgeSeconds(news))
        {
            return entry;
        }

        NowBody body = report.Of(news);
        Entry made = new(body, JsonSerializer.Serialize(body, JsonSerializerOptions.Web));
        _made.AddOrUpdate(news, made);
        return made;
    }

    private sealed record Entry(NowBody Body, string Text);
}
