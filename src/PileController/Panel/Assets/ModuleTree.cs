using System.Text.RegularExpressions;

namespace PileController.Panel.Assets;

/// <summary>Which scripts a script needs before it can run.</summary>
internal static partial class ModuleTree
{
    /// <summary>The scripts that one imports, and those that they import, each once; not what is fetched only when it is asked for.</summary>
    /// <param name="root">Path of the first script, from "/".</param>
    /// <param name="textOf">The text behind a path.</param>
    public static IReadOnlyList<string> Below(string root, Func<string, string> textOf)
    {
        List<string> found = [];
        Queue<string> open = new([root]);
        while (open.TryDequeue(out string? path))
        {
            Uri here = new("file://" + path);
            foreach (Match import in Import().Matches(textOf(path)))
            {
                string needed = new Uri(here, import.Groups["path"].Value).AbsolutePath;
                if (needed != root && !found.Contains(needed))
                {
                    found.Add(needed);
                    open.Enqueue(needed);
                }
            }
        }

        return found;
    }

    [GeneratedRegex("""^(?:import|export)\s[^;]*?from\s+"(?<path>\.[^"]+)";""", RegexOptions.Multiline | RegexOptions.ExplicitCapture)]
    private static partial Regex Import();
}
