using System.IO.Compression;
using System.Reflection;
using System.Security.Cryptography;
using System.Text;

namespace PileController.Panel.Assets;

/// <summary>
/// The page's files, carried inside the program: they are there however it was started and wherever from. Only
/// what was put in at build time can be asked for; no path of the disk is ever looked at. Each is packed when it is
/// first asked for: control starts the sooner.
/// </summary>
internal sealed class PanelAssets
{
    private const string Prefix = "wwwroot/";

    private static readonly Dictionary<string, string> Types = new()
    {
        [".html"] = "text/html; charset=utf-8",
        [".css"] = "text/css; charset=utf-8",
        [".js"] = "text/javascript; charset=utf-8",
        [".svg"] = "image/svg+xml",
    };

    private static readonly Assembly Program = typeof(PanelAssets).Assembly;

    private readonly Dictionary<string, Lazy<PanelAsset>> _byPath = new(StringComparer.Ordinal);

    /// <summary>Finds the files in the program.</summary>
    public PanelAssets()
    {
        foreach (string name in Program.GetManifestResourceNames().Where(name => name.StartsWith(Prefix, StringComparison.Ordinal)))
        {
            _byPath["/" + name[Prefix.Length..]] = new(() => Make(Read(name), Types[Path.GetExtension(name)]));
        }

        Lazy<PanelAsset> bare = _byPath["/index.html"];
        _byPath["/"] = _byPath["/index.html"] = new(() => Hinted(bare.Value));
    }

    /// <summary>The paths that are served.</summary>
    public IEnumerable<string> Paths => _byPath.Keys;

    /// <summary>One file.</summary>
    public PanelAsset Of(string path) => _byPath[path].Value;

    // Found one behind the other, the scripts of the first view would take a round trip a level.
    private PanelAsset Hinted(PanelAsset index)
    {
        string text = Encoding.UTF8.GetString(index.Content);
        string hints = string.Concat(ModuleTree
            .Below("/js/main.js", path => Encoding.UTF8.GetString(Of(path).Content))
            .Select(path => $"  <link rel=\"modulepreload\" href=\"{path[1..]}\">\n"));
        return Make(Encoding.UTF8.GetBytes(text.Replace("</head>", hints + "</head>", StringComparison.Ordinal)), index.Type);
    }

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
}

/// <summary>One file of the page.</summary>
/// <param name="Content">As it is.</param>
/// <param name="Brotli">Packed.</param>
/// <param name="Type">Its media type.</param>
/// <param name="Tag">Changes whenever the content does.</param>
internal sealed record PanelAsset(byte[] Content, byte[] Brotli, string Type, string Tag);
