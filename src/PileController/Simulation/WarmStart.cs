using System.Text.Json;
using PileController.Settings;

namespace PileController.Simulation;

/// <summary>A holding as it stood at the end of a season, kept to go on from.</summary>
/// <param name="MadeWith">Mark of the settings it was made with (<see cref="MarkOf"/>).</param>
/// <param name="State">The holding.</param>
internal sealed record WarmStart(string MadeWith, HoldingState State)
{
    public const string FileName = "warm-start.json";

    private static readonly JsonSerializerOptions Options = new(JsonSerializerDefaults.Web) { WriteIndented = false };

    /// <summary>Fingerprint of what a holding depends on: where its page is served moves no heat.</summary>
    public static string MarkOf(PileSettings settings) => (settings with { Panel = new PanelSettings() }).Fingerprint();

    /// <summary>As JSON; numbers round-trip to the bit.</summary>
    public string ToJson() => JsonSerializer.Serialize(this, Options) + "\n";

    /// <summary>Reads what <see cref="ToJson"/> wrote.</summary>
    /// <exception cref="JsonException">It is not such a text.</exception>
    public static WarmStart FromJson(string text) =>
        JsonSerializer.Deserialize<WarmStart>(text, Options) ?? throw new JsonException("The warm start is empty.");

    /// <summary>The one that ships with the demo.</summary>
    public static WarmStart Shipped()
    {
        using StreamReader reader = new(Demo.Open(FileName));
        return FromJson(reader.ReadToEnd());
    }
}
