using System.Text.Json;
using PileController.Physics.Plants;

namespace PileController.FarSide.Plants;

/// <summary>The state of a plant in a holding that was kept: what stands below "state", "plant".</summary>
public static class KeptPlant
{
    private static readonly JsonSerializerOptions Options = new(JsonSerializerDefaults.Web);

    /// <summary>Reads it.</summary>
    /// <param name="text">JSON of the holding.</param>
    /// <exception cref="InvalidDataException">There is no plant in it.</exception>
    public static PlantState Read(string text)
    {
        try
        {
            using JsonDocument holding = JsonDocument.Parse(text);
            return holding.RootElement.TryGetProperty("state", out JsonElement state) && state.TryGetProperty("plant", out JsonElement plant)
                ? plant.Deserialize<PlantState>(Options)!
                : throw new InvalidDataException("It holds no \"state\" with a \"plant\"; allowed: a holding as the controller keeps it.");
        }
        catch (JsonException error)
        {
            throw new InvalidDataException($"It is no holding as the controller keeps it: {error.Message}", error);
        }
    }
}
