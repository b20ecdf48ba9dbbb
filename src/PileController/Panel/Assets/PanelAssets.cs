using System.IO.Compression;
using System.Reflection;
using System.Security.Cryptography;
using System.Text;
using System.Text.RegularExpressions;

namespace PileController.Panel.Assets;

/// <summary>
/// The page's files, carried inside the program: they are there however it was started and wherever from. Only
/// what was put in at build time can be asked for; no path of the disk is ever looked at. Each is packed when it is
/// first asked for: control starts the sooner.
/// </summary>
internal sealed partial class PanelAssets
{
    private const string Prefix = "wwwroot/";
    private const string IndexPath = "/index.html";

    // What stands in here is fetched once the first look is painted.
    private const string Later = "<template id=\"later\">";

    private static readonly Dictionary<string, string> Types = new()
    {
        [".html"] = "text/html; charset=utf-8",
        [".css"] = "text/css; charset=utf-8",
        [".js"] = "text/javascript; charset=utf-8",
        [".svg"] = "image/svg+xml",
    };

    private static readonly Assembly Program = typeof(PanelAssets).Assembly;

    private readonly Dictionary<string, Lazy<PanelAsset>> _byPath = new(StringComparer.Ordinal);
    private readonly Lazy<string> _index;

    /// <summary>Finds the files in the program.</summary>
    public PanelAssets()
    {
        foreach (string name in Program.GetManifestResourceNames().Where(name => name.StartsWith(Prefix, StringComparison.Ordinal)))
        {
            _byPath["/" + name[Prefix.Length..]] = new(() => Make(Read(name), Types[Path.GetExtension(name)]));
        }

        string index = TextOf(IndexPath);
        string styled = Styled(index);
        _index = new(() => Hinted(styled));
        IndexStyle = Joined(index[..index.IndexOf("<body>", StringComparison.Ordinal)]);
        IndexScript = InnerScript().Match(index).Groups["script"].Value;
        _byPath.Remove(IndexPath);
    }

    /// <summary>The page itself, with places in it for what is told of the moment.</summary>
    public string Index => _index.Value;

    /// <summary>The styles within the page.</summary>
    public string IndexStyle { get; }

    /// <summary>The one script within the page.</summary>
    public string IndexScript { get; }

    /// <summary>The paths that are served.</summary>
    public IEnumerable<string> Paths => _byPath.Keys;

    /// <summary>One file.</summary>
    public PanelAsset Of(string path) => _byPath[path].Value;

    /// <summary>The text of one file.</summary>
    public static string TextOf(string path) => Encoding.UTF8.GetString(Read(Prefix + path[1..]));

    // The styles named in the head go into the page itself, since nothing is painted before they have come. The others
    // are one file, and none to be asked for the next time: its name changes with what is in it.
    private string Styled(string index)
    {
        int body = index.IndexOf("<body>", StringComparison.Ordinal);
        string head = index[..body];
        string inner = StyleLink().Replace(head, string.Empty).Replace("</head>", $"  <style>{Joined(head)}</style>\n</head>", StringComparison.Ordinal);
        PanelAsset rest = Make(Encoding.UTF8.GetBytes(Joined(index[body..])), Types[".css"]) with { Lasting = true };
        string path = $"css/rest-{rest.Tag.Trim('"')}.css";
        _byPath["/" + path] = new(rest);
        return inner + StyleLink().Replace(index[body..], string.Empty).Replace(Later, $"{Later}\n    <link rel=\"stylesheet\" href=\"{path}\">", StringComparison.Ordinal);
    }

    private static string Joined(string markup) => string.Concat(StyleLink().Matches(markup).Select(link => TextOf("/" + link.Groups["path"].Value)));

    // Found one behind the other, the scripts of the first view would take a round trip a level.
    private static string Hinted(string index) => index.Replace(
        Later,
        Later + string.Concat(ModuleTree.Below("/js/main.js", TextOf).Select(path => $"\n    <link rel=\"modulepreload\" href=\"{path[1..]}\">")),
        StringComparison.Ordinal);

    private static byte[] Read(string name)
    {
        using Stream stream = Program.GetManifestResourceStream(name)!;
        using MemoryStream copy = new();
        stream.CopyTo(copy);
        return copy.ToArray();
    }

    private static PanelAsset Make(byte[] content, string type)
    {
        using MemoryStream packed = new();
        using (BrotliStream brotli = new(packed, CompressionLevel.Optimal, leaveOpen: true))
        {
            brotli.Write(content);
        }

        return new PanelAsset(content, packed.ToArray(), type, $"\"{Convert.ToHexStringLower(SHA256.HashData(content))[..16]}\"");
    }

    [GeneratedRegex("<script>(?<script>.*?)</script>", RegexOptions.Singleline)]
    private static partial Regex InnerScript();

    [GeneratedRegex("""^ *<link rel="stylesheet" href="(?<path>[^"]+)">\n""", RegexOptions.Multiline)]
    private static partial Regex StyleLink();
}

/// <summary>One file of the page.</summary>
/// <param name="Content">As it is.</param>
/// <param name="Brotli">Packed.</param>
/// <param name="Type">Its media type.</param>
/// <param name="Tag">Changes whenever the content does.</param>
internal sealed record PanelAsset(byte[] Content, byte[] Brotli, string Type, string Tag)
{
    /// <summary>Whether its path changes whenever the content does, so that it need never be asked for again.</summary>
    public bool Lasting { get; init; }
}
