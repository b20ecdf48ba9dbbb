using System.Text.Json;
using PileController.Tests.Architecture;

namespace PileController.Tests.Commands;

public sealed class CalcBlendTests : IDisposable
{
    private const string Chips = """ "name": "chips", "mass": "6000 kg", "moisture": "45 %", "carbonToNitrogen": 100, "bulkDensity": "300 kg/m3" """;

    private readonly string _folder = Directory.CreateTempSubdirectory("pile-blend-").FullName;

    /// <summary>Materials, and words of the one sentence they earn.</summary>
    public static TheoryData<string, string> Impossible => new()
    {
        { "", "materials is missing or empty; allowed: a list of one material or more" },
        { """{ "name": "chips", "moisture": "45 %", "carbonToNitrogen": 100, "bulkDensity": "300 kg/m3" }""", "materials[0].mass is missing; allowed: a mass, or a volume with a bulkDensity" },
        { """{ "name": "chips", "mass": "0 kg", "moisture": "45 %", "carbonToNitrogen": 100, "bulkDensity": "300 kg/m3" }""", "materials[0].mass is \"0 kg\"; allowed: 0.1 kg to 500000 kg" },
        { """{ "name": "chips", "mass": "6000 kg", "moisture": "100 %", "carbonToNitrogen": 100, "bulkDensity": "300 kg/m3" }""", "materials[0].moisture is \"100 %\"; allowed: 0 to 0.95, or \"0 %\" to \"95 %\"" },
        { """{ "name": "chips", "mass": "6000 kg", "carbonToNitrogen": 100, "bulkDensity": "300 kg/m3" }""", "materials[0].moisture is missing" },
        { """{ "name": "chips", "mass": "6000 kg", "moisture": "45 %", "carbonToNitrogen": 0, "bulkDensity": "300 kg/m3" }""", "materials[0].carbonToNitrogen is 0; allowed: 2 to 1000 parts of carbon" },
        { """{ "name": "chips", "mass": "6000 kg", "moisture": "45 %", "bulkDensity": "300 kg/m3" }""", "materials[0].carbonToNitrogen is missing; allowed: a carbonToNitrogen, or a share of nitrogen" },
        { """{ "name": "chips", "mass": "6000 kg", "moisture": "45 %", "carbonToNitrogen": 100 }""", "materials[0].bulkDensity is missing; allowed: a bulkDensity, or both mass and volume" },
        { """{ "name": "chips", "mass": "6000 kg", "moisture": "45 %", "carbonToNitrogen": 100, "bulkDensity": "1400 kg/m3" }""", "materials[0].bulkDensity is 1400 kg/m3; allowed: less than 12" },
        { """{ "name": "chips", "mass": "6000 kg", "volume": "2 m3", "moisture": "45 %", "carbonToNitrogen": 100 }""", "materials[0].bulkDensity is 3000 kg/m3; allowed: less than 12" },
        { """{ "name": "chips", "mass": "6000 kg", "volume": "10 m3", "moisture": "45 %", "carbonToNitrogen": 100, "bulkDensity": "300 kg/m3" }""", "materials[0].bulkDensity is 300 kg/m3; allowed: about 600 kg/m3, as mass and volume say" },
        { """{ "name": "chips", "mass": "6000 kg", "moisture": "45 %", "carbonToNitrogen": 100, "carbon": 0.5, "nitrogen": 0.01, "bulkDensity": "300 kg/m3" }""", "materials[0].carbonToNitrogen is 100; allowed: about 50, as carbon and nitrogen say" },
        { """{ "name": "chips", "mass": "6000 kg", "moisture": "45 %", "carbonToNitrogen": 100, "nitrogen": 0.01, "bulkDensity": "300 kg/m3" }""", "materials[0].carbonToNitrogen is 100; allowed: at most 65 with that share of nitrogen" },
        { """{ "name": "chips", "mass": "6000 kg", "moisture": "45 %", "carbonToNitrogen": 100, "bulkDensity": "300 kg/m3", "fast": 0.5, "slow": 0.6 }""", "materials[0].fast is with slow and ash 1.15 of the dry mass; allowed: fast, slow and ash together at most 1" },
        { """{ "name": "chips", "mass": "6000 kg", "moisture": "45 %", "carbonToNitrogen": 100, "bulkDensity": "300 kg/m3", "carbon": 0.65, "ash": 0.9 }""", "materials[0].carbon is with nitrogen and ash 1.56 of the dry mass; allowed: carbon, nitrogen and ash together at most 1" },
        { """{ "name": "chips", "mass": "6000 kg", "moisture": "45 %", "carbonToNitrogen": 2, "bulkDensity": "300 kg/m3", "carbon": 0.65, "ash": 0.3 }""", "materials[0].carbon is with nitrogen and ash 1.28 of the dry mass" },
        { """{ "name": "chips", "mass": "6000 kg", "moisture": "45 %", "carbonToNitrogen": 100, "bulkDensity": 300 }""", "materials[0].bulkDensity is 300; allowed: a density needs its unit" },
        { """{ "name": "chips", "mas": "6000 kg", "moisture": "45 %", "carbonToNitrogen": 100, "bulkDensity": "300 kg/m3" }""", "materials[0].mas is an unknown key; allowed: the nearest known key is \"mass\"" },
    };

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public async Task Blend_ForMachines_BeginsWithTheAgreedKeys()
    {
        JsonElement answer = await Answered(Recipe($"{{ {Chips} }}"));
        Assert.Equal(
            [
                "carbonToNitrogen", "moisturePercent", "waterToAddLitres", "bulkDensityKgPerM3", "volumeM3", "freeAirSpacePercent",
                "wateredMoisturePercent", "wateredBulkDensityKgPerM3", "wateredFreeAirSpacePercent",
                "wetMassKg", "dryMassKg", "degradableKg", "fastKg", "slowKg", "misses",
            ],
            answer.EnumerateObject().Select(p => p.Name));
    }

    // Cornell Waste Management Institute, Getting the Right Mix (seen in a copy): 10 kg of grass at 77 % and 6.8 kg of leaves at 35 % make 60 %.
    [Fact]
    public async Task Blend_OfGrassAndLeaves_HasThePublishedMoisture()
    {
        JsonElement answer = await Answered(Recipe("""
            { "name": "grass", "mass": "10 kg", "moisture": "77 %", "nitrogen": "2.4 %", "carbon": "45 %", "bulkDensity": "400 kg/m3" },
            { "name": "leaves", "mass": "6.8 kg", "moisture": "35 %", "nitrogen": "0.75 %", "carbon": "50 %", "bulkDensity": "150 kg/m3" }
            """));

        Assert.Equal(60, answer.GetProperty("moisturePercent").GetDouble(), 0.1);
        Assert.Equal(0, answer.GetProperty("waterToAddLitres").GetDouble());

        // By hand from the formula stated there: carbon 1.035 + 2.21 kg, nitrogen 0.0552 + 0.03315 kg.
        Assert.Equal(3.245 / 0.08835, answer.GetProperty("carbonToNitrogen").GetDouble(), 1e-6);
    }

    [Fact]
    public async Task Blend_ByVolumeOrByMass_IsTheSame()
    {
        string byMass = Recipe($"{{ {Chips}, \"volume\": null, \"carbon\": null }}");
        string byVolume = Recipe($"{{ {Chips.Replace("\"mass\": \"6000 kg\"", "\"volume\": \"20 m3\"", StringComparison.Ordinal)} }}", "volume.json");
        string byBoth = Recipe($"{{ {Chips.Replace("\"bulkDensity\": \"300 kg/m3\"", "\"volume\": \"20 m3\"", StringComparison.Ordinal)} }}", "both.json");

        string expected = (await Answered(byMass)).GetRawText();
        Assert.Equal(expected, (await Answered(byVolume)).GetRawText());
        Assert.Equal(expected, (await Answered(byBoth)).GetRawText());
    }

    [Fact]
    public async Task Blend_ThatMissesABand_SaysWhichAndWhatWouldMendIt()
    {
        CommandLine run = await CommandLine.RunAsync("calc", "blend", "--recipe", Recipe($$"""
            { {{Chips}} },
            { "name": "manure", "mass": "200 kg", "moisture": "70 %", "carbonToNitrogen": 20, "bulkDensity": "700 kg/m3" }
            """));

        Assert.Equal(0, run.ExitCode);
        Assert.Matches(@"misses +C:N \d\d, published 20 to 60 \(The Composting Handbook \(2021\) ch\. 4 table 4\.2\); would mend it: \d+ kg \(\d+ lb\) more of manure", run.Output);
    }

    [Fact]
    public async Task Explain_GivesTheExampleThatShipsAndReadsBack()
    {
        CommandLine explained = await CommandLine.RunAsync("calc", "blend", "--explain");
        string shipped = Path.Combine(Repository.Root, "hardware", "examples", "recipe.json");

        Assert.Equal(0, explained.ExitCode);
        Assert.Equal(await File.ReadAllTextAsync(shipped), explained.Output.ReplaceLineEndings("\n"));
        JsonElement answer = await Answered(shipped);
        Assert.Empty(answer.GetProperty("misses").EnumerateArray());
        Assert.True(answer.GetProperty("degradableKg").GetDouble() < answer.GetProperty("dryMassKg").GetDouble());
    }

    [Theory]
    [MemberData(nameof(Impossible))]
    public async Task Blend_OfTheImpossible_IsToldByPath(string materials, string words)
    {
        CommandLine run = await CommandLine.RunAsync("calc", "blend", "--recipe", Recipe(materials));

        Assert.Equal(2, run.ExitCode);
        Assert.Equal("", run.Output);
        Assert.Single(run.Error.Split('\n', StringSplitOptions.RemoveEmptyEntries));
        Assert.Contains(words, run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Blend_WithSeveralFaults_ListsThemAll()
    {
        CommandLine run = await CommandLine.RunAsync("calc", "blend", "--recipe", Recipe("""
            { "name": "a", "moisture": "45 %", "carbonToNitrogen": 100 },
            { "name": "b", "mass": "5 kg", "moisture": "45 %", "bulkDensity": "300 kg/m3" }
            """));

        Assert.Equal(2, run.ExitCode);
        Assert.Contains("materials[0].mass", run.Error, StringComparison.Ordinal);
        Assert.Contains("materials[1].carbonToNitrogen", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Blend_WithoutARecipe_IsWrongUse()
    {
        CommandLine run = await CommandLine.RunAsync("calc", "blend");
        Assert.Equal(2, run.ExitCode);
        Assert.Contains("--recipe is missing; allowed: the path of a recipe file, or --explain", run.Error, StringComparison.Ordinal);
    }

    private string Recipe(string materials, string name = "recipe.json")
    {
        string path = Path.Combine(_folder, name);
        File.WriteAllText(path, $"{{ \"targetMoisture\": \"55 %\", \"materials\": [ {materials} ] }}");
        return path;
    }

    private static async Task<JsonElement> Answered(string path)
    {
        CommandLine run = await CommandLine.RunAsync("calc", "blend", "--recipe", path, "--json");
        Assert.Equal("", run.Error);
        Assert.Equal(0, run.ExitCode);
        return JsonDocument.Parse(run.Output).RootElement;
    }
}
