using System.CommandLine;
using PileController.Commands.Shell;
using PileController.Physics.Recipes;
using PileController.Plans.Recipes;
using PileController.Settings;
using PileController.Units;

namespace PileController.Commands.Calc;

/// <summary>calc blend: what a recipe of several materials makes.</summary>
internal static class CalcBlend
{
    private static readonly Option<string> File = new("--recipe") { Description = "The recipe file.", Arity = ArgumentArity.ExactlyOne };

    private static readonly Option<bool> Explain = new("--explain") { Description = "Instead, print a recipe file with every key and what is allowed." };

    private static readonly Option<bool> Json = Ask.Json();

    public static Command Create()
    {
        PileCommand command = new(
            "blend", "What a recipe of several materials makes: C:N, moisture, water to add, density, air, and what would mend it.",
            "PileController calc blend --explain")
        {
            File, Explain, Json,
        };
        command.Validators.Add(result =>
        {
            if (result.GetResult(File) is null && !result.GetValue(Explain))
            {
                result.AddError("--recipe is missing; allowed: the path of a recipe file, or --explain to see one");
            }
        });
        command.SetAction(Run);
        return command;
    }

    private static int Run(ParseResult parse)
    {
        if (parse.GetValue(Explain))
        {
            parse.InvocationConfiguration.Output.Write(PartFile.Explain("A recipe: what goes into a heap.", RecipeFields.Table, Recipe.Example));
            return ExitCodes.Done;
        }

        if (PartSource.Sound(parse, File, RecipeFields.Table, Recipe.Blank, RecipeChecks.Faults) is not { } recipe)
        {
            return ExitCodes.WrongUse;
        }

        Blend blend = new([.. recipe.Materials.Select(m => m.ToMaterial())], recipe.TargetMoisture);
        IReadOnlyList<Mending> misses = Mending.Of(blend);
        if (parse.GetValue(Json))
        {
            Answer.WriteJson(parse, BlendAnswer.Of(blend, misses));
        }
        else
        {
            Answer.WriteRows(parse, Rows(blend, misses));
        }

        return ExitCodes.Done;
    }

    private static List<(string, string)> Rows(Blend blend, IReadOnlyList<Mending> misses)
    {
        List<(string, string)> rows =
        [
            ("carbon to nitrogen", $"{blend.CarbonToNitrogen:F1}, {Best(blend.CarbonToNitrogen)}"),
            ("mass", $"{Show.Both(s => Show.Mass(blend.WetMassKg, s))}, of which dry {Show.Both(s => Show.Mass(blend.DryMassKg, s))}"),
            ("moisture", $"{100 * blend.Moisture:F1} %"),
            ("water to add", $"{Show.Both(s => Show.Volume(blend.WaterToAddKg, s))}, to {100 * blend.WateredMoisture:F1} %"),
            ("volume", $"{blend.VolumeM3:F1} m3 ({blend.VolumeM3 / Customary.CubicYard:F1} yd3) loose; it settles"),
            ("bulk density", $"{Density(blend.BulkDensityKgPerM3)}, watered {Density(blend.WateredDensityKgPerM3)}"),
            ("free air space", $"{100 * blend.FreeAirSpace:F0} %, watered {100 * blend.WateredFreeAirSpace:F0} %"),
            ("what can rot", blend.DegradableKg is { } kg ? Show.Both(s => Show.Mass(kg, s)) : "not known: not every material tells fast and slow"),
        ];
        rows.AddRange(misses.Select(m => ("misses", $"{MendingText.Miss(m)} ({m.Band.Source}); would mend it: {MendingText.Mend(m)}")));
        if (misses.Count == 0)
        {
            rows.Add(("bands", "no published limit is missed: moisture, C:N, density, free air space; inside a limit is not the same as best"));
        }

        return rows;
    }

    // The Composting Handbook (2021) ch. 4 table 4.2.
    private static string Best(double ratio) => ratio switch
    {
        < 25 => "best 25 to 40, acceptable 20 to 60: rich, it may smell of ammonia",
        > 40 => "best 25 to 40, acceptable 20 to 60: woody, it lights later and burns slowly",
        _ => "in the best band, 25 to 40",
    };

    private static string Density(double kgPerM3) => $"{kgPerM3:F0} kg/m3 ({kgPerM3 / Customary.PoundPerCubicYard:F0} lb/yd3)";

    private sealed record BlendAnswer(
        double CarbonToNitrogen, double MoisturePercent, double WaterToAddLitres, double BulkDensityKgPerM3, double VolumeM3, double FreeAirSpacePercent,
        double WateredMoisturePercent, double WateredBulkDensityKgPerM3, double WateredFreeAirSpacePercent,
        double WetMassKg, double DryMassKg, double? DegradableKg, double? FastKg, double? SlowKg, IReadOnlyList<BlendMiss> Misses)
    {
        public static BlendAnswer Of(Blend blend, IReadOnlyList<Mending> misses) => new(
            blend.CarbonToNitrogen, 100 * blend.Moisture, blend.WaterToAddKg, blend.BulkDensityKgPerM3, blend.VolumeM3, 100 * blend.FreeAirSpace,
            100 * blend.WateredMoisture, blend.WateredDensityKgPerM3, 100 * blend.WateredFreeAirSpace,
            blend.WetMassKg, blend.DryMassKg, blend.DegradableKg, blend.FastKg, blend.SlowKg,
            [.. misses.Select(m => new BlendMiss(m.Band.Kind, MendingText.Miss(m), MendingText.Mend(m), m.More?.Name, m.MoreKg, m.Band.Source))]);
    }

    private sealed record BlendMiss(string Kind, string Found, string Mend, string? MoreOf, double MoreKg, string Source);
}
