using System.Text.RegularExpressions;
using PileController.Physics.Heaps;
using PileController.Plans.Sketch;
using PileController.Settings;
using PileController.Units;

namespace PileController.Tests.Plans.Sketch;

/// <summary>What the sketch says to people: each sentence in its own units, each caution where it applies.</summary>
public partial class PlanWordsTests
{
    private static IEnumerable<PlanWords> All(PlanSketch sketch) => [.. sketch.Advice, .. sketch.Claims, .. sketch.Cautions];

    [Fact]
    public void Sentence_InEitherSystem_HoldsNoUnitOfTheOther() => Assert.All(All(Sketched.Demo), words =>
    {
        Assert.DoesNotMatch(UsUnit(), words.Metric);
        Assert.DoesNotMatch(MetricUnit(), words.Us);
    });

    [Fact]
    public void Row_InEitherSystem_HoldsNoTemperatureOfTheOther()
    {
        Assert.All(SketchText.Rows(Sketched.Demo, UnitSystem.Metric), row => Assert.DoesNotMatch(UsUnit(), row.Value));
        Assert.All(SketchText.Rows(Sketched.Demo, UnitSystem.Us), row => Assert.DoesNotContain("°C", row.Value, StringComparison.Ordinal));
    }

    [Fact]
    public void Caution_Any_EndsByWhoDecides() => Assert.All(
        Sketched.Demo.Cautions, words => Assert.EndsWith(Say.LocalCodes, words.Metric, StringComparison.Ordinal));

    [Fact]
    public void Gases_WithClosedDucts_AreNotWarnedOfAndWithAirThroughTheHeapAre()
    {
        PileSettings through = PileSettings.AlderBank with
        {
            Heap = PileSettings.AlderBank.Heap with { Duct = new DuctBuild { ThroughHeap = true, FullFlowM3PerS = 0.004 } },
        };

        Assert.DoesNotContain(Sketched.Demo.Cautions, c => c.Kind == "gases");
        Assert.Contains(Sketched.Of(through).Cautions, c => c.Kind == "gases");
    }

    [Fact]
    public void WaterCautions_WithoutWater_AreNotGiven()
    {
        PileSettings dry = PileSettings.AlderBank with
        {
            Heap = PileSettings.AlderBank.Heap with { DrumLitres = 0, Coil = new CoilBuild { LengthM = 0 } },
        };
        string[] water = ["scald", "warmWater"];

        Assert.Equal(water, Sketched.Demo.Cautions.Select(c => c.Kind).Intersect(water));
        Assert.Empty(Sketched.Of(dry).Cautions.Select(c => c.Kind).Intersect(water));
    }

    [Fact]
    public void Frost_OnlyWhereALineCanFreezeWithinADay_IsWarnedOf()
    {
        PileSettings open = PileSettings.AlderBank with { Loop = PileSettings.AlderBank.Loop with { LineExposure = 1 } };

        Assert.DoesNotContain(Sketched.Demo.Cautions, c => c.Kind == "frost");
        Assert.Contains(Sketched.Of(open).Cautions, c => c.Kind == "frost");
    }

    [Fact]
    public void HotWaterWish_OnTheDemo_IsJudgedImpossible()
    {
        PlanWords wish = Assert.Single(Sketched.Demo.Claims, c => c.Kind == "hotWaterWish");

        // 1 US gal/min raised from 10 to 60 °C is 13.188 kW (IF97, metered at the cold side).
        Assert.Equal(13_188, wish.Watts!.Value, 13.188);
        Assert.Contains("more than all that can burn", wish.Metric, StringComparison.Ordinal);
    }

    [GeneratedRegex(@"°F|BTU|\bgal\b|\bft\b|\blb\b|\bin\b(?= thick)")]
    private static partial Regex UsUnit();

    [GeneratedRegex(@"°C|\bW\b|kWh?\b|\d (L|kg|m|K|mm|MJ)\b")]
    private static partial Regex MetricUnit();
}
