using System.IO.Compression;
using System.Reflection;
using System.Security.Cryptography;
using System.Text;

namespace PileController.Panel.Assets;

/// <summary>
/// The page's files, carried inside the program: they are there however it was started and wherever from. Only
/// what was put in at build time can be asked for; no path of the disk is ever looked at.
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

    private readonly Dictionary<string, PanelAsset> _byPath = new(StringComparer.Ordinal);

    /// <summary>Takes the files out of the program.</summary>
    public PanelAssets()
    {
        Assembly program = typeof(PanelAssets).Assembly;
        foreach (string name in program.GetManifestResourceNames().Where(name => name.StartsWith(Prefix, StringComparison.Ordinal)))
        {
            using Stream stream = program.GetManifestResourceStream(name)!;
            using MemoryStream copy = new();
            stream.CopyTo(copy);
            _byPath["/" + name[Prefix.Length..]] = Make(copy.ToArray(), Types[Path.GetExtension(name)]);
        }

        _byPath["/"] = _byPath["/index.html"] = Hinted(_byPath["/index.html"]);
    }

    /// <summary>The paths that are served.</summary>
    public IEnumerable<string> Paths => _byPath.Keys;

    /// <summary>One file.</summary>
    public PanelAsset Of(string path) => _byPath[path];

    // Found one behind the other, the scripts of the first view would take a round trip a level.
    private PanelAsset Hinted(PanelAsset index)
    {
        string text = Encoding.UTF8.GetString(index.Content);
        string hints = string.Concat(ModuleTree
            .Below("/js/main.js", path => Encoding.UTF8.GetString(_byPath[path].Content))
            .Select(path => $"  <link rel=\"modulepreload\" href=\"{path[1..]}\">\n"));
        return Make(Encoding.UTF8.GetBytes(text.Replace("</head>", hints + "</head>", StringComparison.Ordinal)), index.Type);
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
