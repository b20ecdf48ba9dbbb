using System.Text.Json;
using System.Text.Json.Nodes;

namespace PileController.Settings.Changes;

/// <summary>Lays values over a settings file. The file's own text is never touched.</summary>
internal static class SettingsMerge
{
    private static readonly JsonDocumentOptions Lenient = new() { AllowTrailingCommas = true, CommentHandling = JsonCommentHandling.Skip };

    /// <summary>The file's text with the values laid over it, without its comments.</summary>
    /// <param name="fileText">A settings text without faults.</param>
    /// <param name="values">Values as JSON by path.</param>
    public static string Text(string fileText, IReadOnlyDictionary<string, string> values)
    {
        JsonObject root = JsonNode.Parse(fileText, null, Lenient)!.AsObject();
        foreach ((string path, string json) in values)
        {
            string[] keys = path.Split('.');
            JsonObject section = root;
            foreach (string key in keys[..^1])
            {
                if (section[key] is not JsonObject inner)
                {
                    section[key] = inner = [];
                }

                section = inner;
            }

            section[keys[^1]] = JsonNode.Parse(json);
        }

        return root.ToJsonString(new JsonSerializerOptions
        {
            WriteIndented = true,
            Encoder = System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
        });
    }
}
