using System.Security.Cryptography;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.RegularExpressions;
using System.Text.Unicode;
using PileController.Panel.Assets;
using PileController.Panel.Now;

namespace PileController.Panel.Sight;

/// <summary>
/// The page as it is first answered: with the newest tick in it twice, as text that can be read before any script has
/// come, and as data from which the scripts draw without waiting for the stream.
/// </summary>
internal sealed partial class SightPage
{
    // Keeps "°" and "−" as they are; what means anything in HTML never stays.
    private static readonly HtmlEncoder Html = HtmlEncoder.Create(UnicodeRanges.All);

    private readonly string _before;
    private readonly string _moment;
    private readonly string _between;
    private readonly string _after;
    private readonly SightText _text;

    /// <summary>Takes the page apart at its marks.</summary>
    /// <exception cref="InvalidOperationException">index.html lacks a mark.</exception>
    public SightPage(PanelAssets assets)
    {
        Match page = Marks().Match(assets.Index);
        if (!page.Success)
        {
            throw new InvalidOperationException("index.html: no place for the moment, or none for what is told to the scripts.");
        }

        _before = page.Groups["before"].Value;
        _moment = page.Groups["moment"].Value.Trim();
        _between = page.Groups["between"].Value;
        _after = page.Groups["after"].Value;
        StyleHash = HashOf(assets.IndexStyle);
        ScriptHash = HashOf(assets.IndexScript);
        _text = new SightText(new PageWords(PanelAssets.TextOf));
    }

    /// <summary>By this the browser knows the page's own styles from any others; nothing else may be put in.</summary>
    public string StyleHash { get; }

    /// <summary>The same of its script.</summary>
    public string ScriptHash { get; }

    /// <summary>The page without any figure: for whoever may not look, and before the first tick.</summary>
    /// <param name="reader">For whom.</param>
    public string Empty(SightReader reader) => Filled(_before, _text.Frame(null, reader)) + _between + _after;

    /// <summary>The page with a moment.</summary>
    /// <param name="now">The moment.</param>
    /// <param name="json">The same as the scripts read it. Must hold no "&lt;", as the web's own JSON writer sees to.</param>
    /// <param name="reader">For whom.</param>
    public string Of(NowBody now, string json, SightReader reader) =>
        $"{Filled(_before, _text.Frame(now, reader))}{Filled(_moment, _text.Moment(now, reader.American))}{_between}  <script type=\"application/json\" id=\"told\">{json}</script>\n{_after}";

    private static string Filled(string markup, IReadOnlyDictionary<string, string> texts) =>
        Place().Replace(markup, place => Html.Encode(texts[place.Groups["name"].Value]));

    private static string HashOf(string text) => "sha256-" + Convert.ToBase64String(SHA256.HashData(Encoding.UTF8.GetBytes(text)));

    [GeneratedRegex(@"^(?<before>.*?)<!--moment(?<moment>.*?)moment-->(?<between>.*)  <!--told-->\n(?<after>.*)$", RegexOptions.Singleline)]
    private static partial Regex Marks();

    [GeneratedRegex(@"\{(?<name>\w+)\}")]
    private static partial Regex Place();
}
