using PileController.Physics.Recipes;
using PileController.Settings;

namespace PileController.Plans.Recipes;

/// <summary>What must hold between the values of a recipe.</summary>
internal static class RecipeChecks
{
    // Figures of the same thing told twice may differ by this much: buckets and tables are rounded.
    private const double Slack = 0.02;

    /// <summary>Everything wrong, each with what would be right.</summary>
    public static IEnumerable<SettingsFault> Faults(Recipe recipe) => recipe.Materials.Count == 0
        ? [new SettingsFault("materials", "missing or empty", "a list of one material or more, each with its mass or volume")]
        : recipe.Materials.SelectMany((m, at) => Of(m, $"materials[{at}]"));

    private static IEnumerable<SettingsFault> Of(RecipeMaterial m, string path) =>
        Amount(m, path).Concat(Elements(m, path)).Concat(Shares(m, path));

    private static IEnumerable<SettingsFault> Amount(RecipeMaterial m, string path)
    {
        if (m.WetMassKg is null && m.VolumeM3 is null)
        {
            yield return new SettingsFault($"{path}.mass", "missing", "a mass, or a volume with a bulkDensity: a recipe needs to know how much");
        }
        else if (m.Density is not { } density)
        {
            yield return new SettingsFault($"{path}.bulkDensity", "missing", "a bulkDensity, or both mass and volume");
        }
        else if (m.WetMassKg is { } mass && m.VolumeM3 is { } volume && !Agree(mass / volume, density))
        {
            yield return new SettingsFault(
                $"{path}.bulkDensity", $"{density:0.#} kg/m3", $"about {mass / volume:0.#} kg/m3, as mass and volume say, or leave it out");
        }
        else if (Material.FullDensityKgPerM3(m.Moisture, m.AshShare) is var full && density >= full)
        {
            yield return new SettingsFault(
                $"{path}.bulkDensity", $"{density:0.#} kg/m3", $"less than {full:0.#} kg/m3, what such a material weighs without any air in it");
        }
    }

    private static IEnumerable<SettingsFault> Elements(RecipeMaterial m, string path)
    {
        if (m.CarbonToNitrogen is null && m.Nitrogen is null)
        {
            yield return new SettingsFault($"{path}.carbonToNitrogen", "missing", "a carbonToNitrogen, or a share of nitrogen");
        }
        else if (m is { CarbonToNitrogen: { } ratio, Nitrogen: { } nitrogen } && !Agree(m.CarbonShare / nitrogen, ratio))
        {
            yield return new SettingsFault(
                $"{path}.carbonToNitrogen", $"{ratio:0.##}", $"about {m.CarbonShare / nitrogen:0.##}, as carbon and nitrogen say, or leave one of the three out");
        }
        else if (m.CarbonShare > 0.65)
        {
            yield return new SettingsFault(
                $"{path}.carbonToNitrogen", $"{m.CarbonToNitrogen:0.##}", $"at most {0.65 / m.Nitrogen:0.##} with that share of nitrogen: no such material is more than 65 % carbon");
        }
        else if (m.CarbonShare + m.NitrogenShare + m.AshShare is > 1 and var sum)
        {
            yield return new SettingsFault(
                $"{path}.carbon", $"with nitrogen and ash {sum:0.##} of the dry mass", "carbon, nitrogen and ash together at most 1");
        }
    }

    private static IEnumerable<SettingsFault> Shares(RecipeMaterial m, string path)
    {
        double sum = (m.Fast ?? 0) + (m.Slow ?? 0) + m.AshShare;
        if (sum > 1)
        {
            yield return new SettingsFault($"{path}.fast", $"with slow and ash {sum:0.##} of the dry mass", "fast, slow and ash together at most 1");
        }
    }

    private static bool Agree(double a, double b) => Math.Abs(a - b) <= Slack * Math.Max(a, b);
}
