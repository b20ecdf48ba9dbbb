using System.Text.Json;
using PileController.Panel.Now;
using PileController.Service;

namespace PileController.Panel.Live;

/// <summary>The text of an event, made once a tick however many watch.</summary>
/// <threadsafety>Safe for use by several threads; two may at worst both make the same text.</threadsafety>
internal sealed class NowText(NowReport report)
{
    private volatile Entry? _latest;

    /// <summary>The text of one tick. A tick told some time ago says so.</summary>
    public string Of(TickNews news)
    {
        if (_latest is { } entry && ReferenceEquals(entry.News, news) && entry.MadeAtSeconds + 1 > report.AgeSeconds)
        {
            return entry.Text;
        }

        NowBody body = report.Of(news);
        Entry made = new(news, body.NewsAgeSeconds, JsonSerializer.Serialize(body, JsonSerializerOptions.Web));
        _latest = made;
        return made.Text;
    }

    private sealed record Entry(TickNews News, double MadeAtSeconds, string Text);
}
