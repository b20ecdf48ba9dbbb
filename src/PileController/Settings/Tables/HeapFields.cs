using PileController.Physics.Heaps;
using PileController.Settings.Fields;
using static PileController.Settings.Kinds.Kind;

namespace PileController.Settings.Tables;

/// <summary>Section "heap" with "coil" and "ducts".</summary>
internal static class HeapFields
{
    private static readonly FieldTable<CoilBuild> Coil = new()
    {
        { "radius", Metres(0, 6), c => c.RadiusM, (c, v) => c with { RadiusM = v }, "Distance of the turns from the heap's axis." },
        { "length", Metres(0, 1000), c => c.LengthM, (c, v) => c with { LengthM = v }, "Length of buried pipe, 0 m for none." },
        { "outerDiameter", MetresAsMm(0.004, 0.1), c => c.OuterDiameterM, (c, v) => c with { OuterDiameterM = v }, "Outside diameter of the pipe." },
        { "innerDiameter", MetresAsMm(0.003, 0.1), c => c.InnerDiameterM, (c, v) => c with { InnerDiameterM = v }, "Inside diameter of the pipe." },
    };

    private static readonly FieldTable<DuctBuild> Ducts = new()
    {
        { "radius", Metres(0, 6), d => d.RadiusM, (d, v) => d with { RadiusM = v }, "Distance of the ducts from the heap's axis." },
        { "length", Metres(0, 200), d => d.LengthM, (d, v) => d with { LengthM = v }, "Length of buried duct, 0 m for none." },
        { "diameter", MetresAsMm(0.05, 0.5), d => d.DiameterM, (d, v) => d with { DiameterM = v }, "Diameter of the duct." },
    };

    public static readonly FieldTable<HeapBuild> Table = new()
    {
        { "radius", Metres(0.5, 6), h => h.RadiusM, (h, v) => h with { RadiusM = v }, "Radius of the upright round body." },
        { "height", Metres(0.5, 4.5), h => h.HeightM, (h, v) => h with { HeightM = v }, "Height of the body." },
        { "wetMass", Kilograms(500, 200_000), h => h.WetMassKg, (h, v) => h with { WetMassKg = v }, "Mass as built, water included." },
        { "moisture", Share(0.2, 0.8), h => h.MoistureFraction, (h, v) => h with { MoistureFraction = v }, "Share of that mass that is water." },
        { "fast", Share(0, 0.5), h => h.FastFraction, (h, v) => h with { FastFraction = v }, "Share of the dry mass that microbes take quickly (greens, manure)." },
        { "slow", Share(0, 0.8), h => h.SlowFraction, (h, v) => h with { SlowFraction = v }, "Share of the dry mass that microbes take slowly within a season." },
        { "buildTemperature", Celsius(-5, 60), h => h.BuildTemperatureC, (h, v) => h with { BuildTemperatureC = v }, "Temperature of the material at building." },
        { "permeability", SquareMetres(1e-11, 1e-6), h => h.PermeabilityM2, (h, v) => h with { PermeabilityM2 = v }, "Permeability of the settled body to air." },
        { "freshPermeability", Number(1, 10, "times the settled"), h => h.FreshPermeabilityRatio, (h, v) => h with { FreshPermeabilityRatio = v }, "How many times more air the loose body lets through when just built." },
        { "cover", Metres(0, 1), h => h.CoverThicknessM, (h, v) => h with { CoverThicknessM = v }, "Thickness of the dry blanket over top and side." },
        { "shells", Whole(4, 60), h => h.Shells, (h, v) => h with { Shells = (int)v!.Value }, "Radial shells of the simulated heap." },
        { "coil", Coil, h => h.Coil, (h, v) => h with { Coil = v }, "The pipe turns round the drum." },
        { "drum", Litres(0, 2000), h => h.DrumLitres, (h, v) => h with { DrumLitres = v }, "Water held by the buried drum, 0 L for none." },
        { "ducts", Ducts, h => h.Duct, (h, v) => h with { Duct = v }, "The metal ducts in the heap." },
    };
}
