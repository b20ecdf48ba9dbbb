using System.Text.Json;
using PileController.Physics.Heaps;
using PileController.Plans.Sketch;
using PileController.Settings;

namespace PileController.Tests.Plans.Sketch;

public class PlanSketchingTests
{
    [Fact]
    public void Sketch_MadeTwice_IsTheSameToTheByte() =>
        Assert.Equal(JsonSerializer.Serialize(Sketched.Demo), JsonSerializer.Serialize(Sketched.Of(PileSettings.AlderBank)));

    [Fact]
    public void Sketch_OfTheDemo_HoldsTheBalanceOfMass()
    {
        SketchHeap heap = Sketched.Demo.Heap;
        double hours = 7 * 24;

        Assert.Equal(9000 * 0.45 * 0.51, heap.DegradableKg, 6);
        Assert.Equal(heap.DegradableKg * 17 / 3.6, heap.MostHeatKWh, 6);
        Assert.True(heap.Weeks.Sum(w => w.GeneratedWatts * hours) / 1000 < heap.MostHeatKWh);
        Assert.All(heap.Weeks, w => Assert.True(w.DrawnWatts >= 0));
    }

    [Fact]
    public void Places_OfTheTurns_AreBestNeitherAtTheDrumNorAtTheRim()
    {
        IReadOnlyList<SketchPlace> places = Sketched.Demo.Coil.Places;
        double best = places.MaxBy(p => p.MeanDrawnWatts)!.RadiusM;

        Assert.True(places.Count >= 5, $"{places.Count} places");
        Assert.Equal(places.OrderBy(p => p.RadiusM), places);
        Assert.InRange(best, places[1].RadiusM, places[^2].RadiusM);
    }

    [Fact]
    public void Places_WithMorePipeThanFitsFurtherIn_LeaveThoseOut()
    {
        PileSettings crowded = PileSettings.AlderBank with
        {
            Heap = PileSettings.AlderBank.Heap with { Coil = new CoilBuild { RadiusM = 1.5, LengthM = 350 } },
        };

        // 350 m fit where 2πr·2 m / (3 × 15.875 mm) is at least that: from 1.33 m outwards.
        Assert.All(Sketched.Of(crowded).Coil.Places, p => Assert.True(p.RadiusM > 1.32, $"{p.RadiusM:F2} m"));
    }

    [Fact]
    public void Turns_AfterAMonthOfDraw_TakeLessThanHalfOfTheirFirstHour()
    {
        SketchCoil coil = Sketched.Demo.Coil;

        Assert.InRange(coil.MonthWPerK / coil.FirstHourWPerK, 0.25, 0.5);
    }

    [Fact]
    public void Conductance_ByTheMetre_FallsAsThePublishedLineSourceDoes()
    {
        // A pipe of 22 mm in a bed of 0.4 W/(m·K) gives 1.65 W/(m·K) after an hour and 0.52 after 30 days (line source,
        // computed): this pipe in this bed must fall by a like share, the wall of the pipe taking off a little.
        SketchCoil coil = Sketched.Demo.Coil;

        Assert.InRange(coil.FirstHourWPerK / coil.LengthM, 0.8, 2.5);
        Assert.InRange(coil.MonthWPerK / coil.LengthM, 0.3, 0.8);
    }

    [Fact]
    public void Air_DrawnThroughTheHeap_CarriesManyTimesTheClosedDucts()
    {
        SketchAir air = Sketched.Demo.Air;

        Assert.True(air.ThroughLatentWatts > 3 * air.ThroughSensibleWatts);
        Assert.InRange(air.ClosedOutletC, 10, 45);
        Assert.True(air.ClosedWatts < air.ThroughSensibleWatts);
    }

    [Fact]
    public void House_OnItsDesignNight_LosesWhatItsSurfacesAndLeaksCarry()
    {
        SketchHouse house = Sketched.Demo.House;

        // 62 m² × 3.3 W/(m²·K) × 0.75 with the curtain drawn, and 0.33 Wh/(m³·K) × 70 m³ × 0.75/h.
        double wattsPerK = (62 * 3.3 * 0.75) + (0.33 * 70 * 0.75);
        Assert.Equal(wattsPerK * (house.InsideC - house.DesignOutsideC), house.DesignLossWatts, 6);
        Assert.All(house.WhatIfs, w => Assert.True(w.DesignLossWatts < house.DesignLossWatts, w.Kind));
    }

    [Fact]
    public void Sketch_OfAHeapWithNothingBuried_IsMadeAndHoldsNumbersOnly()
    {
        PileSettings bare = PileSettings.AlderBank with
        {
            Heap = PileSettings.AlderBank.Heap with
            {
                DrumLitres = 0,
                Coil = new CoilBuild { LengthM = 0 },
                Duct = new DuctBuild { LengthM = 0 },
            },
            Loop = PileSettings.AlderBank.Loop with { StaticLiftM = 100 },
            Control = PileSettings.AlderBank.Control with { BlowerFitted = false },
        };

        PlanSketch sketch = Sketched.Of(bare);

        Assert.Equal(0, sketch.Coil.MeanDrawnWatts);
        Assert.Empty(sketch.Coil.Places);
        Assert.Null(sketch.Loop.TransitSeconds);
        Assert.DoesNotContain("NaN", JsonSerializer.Serialize(sketch), StringComparison.Ordinal);
    }

    [Fact]
    public void Line_InTheOpen_FreezesInTheTimeOfItsWater()
    {
        PileSettings open = PileSettings.AlderBank with { Loop = PileSettings.AlderBank.Loop with { LineExposure = 1 } };
        SketchTrials trials = Sketched.Trials(open);
        double minutes = LoopSketching.Of(trials).MinutesToFreezeStill!.Value;

        // Water of a metre of 12.065 mm bore: 114 mm² × 999 kg/m³ × 4187 J/(kg·K) over 0.12 W/(m·K).
        double timeMinutes = Math.PI / 4 * 0.012065 * 0.012065 * 999 * 4187 / 0.12 / 60;
        double outsideC = HouseLoad.DesignOutsideOf(trials);
        Assert.True(outsideC < 0);
        Assert.Equal(timeMinutes * Math.Log((trials.Draw.ReturnC - outsideC) / -outsideC), minutes, 0.01 * minutes);
    }

    [Fact]
    public void Weather_ThatEndsTooSoon_IsRefusedWithItsDays()
    {
        ArgumentOutOfRangeException refused = Assert.Throws<ArgumentOutOfRangeException>(
            () => PlanSketching.Of(PileSettings.AlderBank, Sketched.Weather, new DateOnly(2026, 9, 1), 60));

        Assert.Contains("The weather runs from", refused.Message, StringComparison.Ordinal);
    }
}
