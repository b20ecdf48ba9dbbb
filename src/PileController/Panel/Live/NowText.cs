using System.Text.Json;
using PileController.Panel.Now;
using PileController.Service;

namespace PileController.Panel.Live;

/// <summary>The text of an event and of the page's first look, made once a tick however many watch.</summary>
/// <threadsafety>Safe for use by several threads; two may at worst both make the same text.</threadsafety>
internal sealed class NowText(NowReport report)
{
    private volatile Entry? _latest;

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
        if (_latest is { } entry && ReferenceEquals(entry.News, news) && entry.Body.NewsAgeSeconds + 1 > report.AgeSeconds)
        {
            return entry;
        }

        NowBody body = report.Of(news);
        Entry made = new(news, body, JsonSerializer.Serialize(body, JsonSerializerOptions.Web));
        _latest = made;
        return made;
    }

    private sealed record Entry(TickNews News, NowBody Body, string Text);
}
