using PileController.Control.Estimation;

namespace PileController.Control.Tests.Estimation;

public sealed class HeapRingsTests
{
    private static readonly HeapFigures Told = HeapFigures.Told(new ControlSettings(), new HeapShape(new ControlSettings()));
    private static readonly HeapFigures Dead = Told with { DemandWPerM3 = 0, PermeabilityM2 = 0 };

    [Fact]
    public void Step_LevelDeadHeapAtTheSurroundings_StaysAsItIs()
    {
        double[] t = Level(9);
        HeapStep step = HeapRings.Step(t, Dead, 3600, new HeapLoad(0, 0, 0, 9, 9));
        Assert.All(t, x => Assert.Equal(9, x, 1e-9));
        Assert.Equal(0, step.NetWatts, 1e-3);
    }

    [Fact]
    public void Step_WhatIsDrawnFromADeadHeapThatLosesNothing_IsWhatItNoLongerHolds()
    {
        // All round it is as warm as the heap, so it loses nothing at the start.
        double[] t = Level(50);
        double before = HeapRings.Stored(t, Dead);
        HeapStep step = HeapRings.Step(t, Dead, 600, new HeapLoad(500, 200, 100, 50, 50));
        Assert.Equal(800 * 600, before - HeapRings.Stored(t, Dead), 800 * 600 * 0.01);
        Assert.Equal(0, step.NetWatts, 8.0);
        Assert.True(t[HeapShape.Sleeve] < t[Told.Shape.CoilRing] && t[Told.Shape.CoilRing] < 50);
        Assert.True(t[HeapShape.Drum] < t[0] && t[0] < 50);
    }

    [Fact]
    public void Step_WhatLeavesTheHeap_IsWhatTheLawsOfCoverAndGroundSay()
    {
        double[] t = Level(60);
        HeapStep step = HeapRings.Step(t, Dead with { ConductivityFactor = 1e6 }, 1, new HeapLoad(0, 0, 0, 0, 10));
        double plan = Math.PI * ((1.9 * 1.9) - (Told.Shape.InnerM * Told.Shape.InnerM));
        double side = 2 * Math.PI * 1.9 * 2;
        double expected = ((plan + side) * 60 / (Told.CoverM2KPerW + 0.07)) + (plan * 50 / 1.5);
        Assert.Equal(-expected, step.NetWatts, 0.01 * expected);
    }

    [Fact]
    public void Step_NodeThatHasSpentItsHeatCapacity_CoolsTheFasterByAsMuch()
    {
        double[] whole = Level(50);
        double[] dried = Level(50);
        double[] spent = new double[HeapShape.Nodes];
        spent[Told.Shape.DuctRing] = 0.25 * Dead.JPerM3K;
        HeapFigures insulated = Dead with { ConductivityFactor = 1e-9 };
        HeapLoad load = new(0, 0, 100, 50, 50);
        HeapRings.Step(whole, insulated, 600, load);
        HeapRings.Step(dried, insulated with { SpentJPerM3K = spent }, 600, load);

        Assert.Equal((50 - whole[Told.Shape.DuctRing]) / 0.75, 50 - dried[Told.Shape.DuctRing], 1e-6);
    }

    [Fact]
    public void JPerM3KOf_MoreSpentThanThereIs_KeepsTheSolidsNothingEats()
    {
        double[] spent = new double[HeapShape.Nodes];
        Array.Fill(spent, 2 * Told.JPerM3K);

        Assert.Equal(0.2 * Told.JPerM3K, (Told with { SpentJPerM3K = spent }).JPerM3KOf(HeapShape.Sleeve));
    }

    [Fact]
    public void Step_HeapThatBreathes_TakesDownWhatItsBedLosesOfItsHeatCapacity()
    {
        double[] spent = new double[HeapShape.Nodes];
        HeapRings.Step(Level(60), Told, 600, new HeapLoad(0, 0, 0, -5, 9), default, spent);

        // The outer rings have the shorter way for their air, and dry the faster.
        Assert.All(spent[..HeapShape.Drum], s => Assert.True(s > 0, $"{s}"));
        Assert.Equal(0, spent[HeapShape.Drum]);
        Assert.True(spent[HeapShape.Rings - 1] > 1.2 * spent[0], $"{spent[HeapShape.Rings - 1]} and {spent[0]}");
    }

    [Theory]
    [InlineData(0)]
    [InlineData(280)]
    public void Step_AnHourAtOnce_IsNearSixTimesTenMinutes(double flowWPerK)
    {
        double[] coarse = Warm();
        double[] fine = Warm();
        HeapLoad load = new(0, 0, 0, -5, 9);
        HeapFlow flow = new(flowWPerK, 15);
        for (int hour = 0; hour < 72; hour++)
        {
            HeapRings.Step(coarse, Told, 3600, load, flow);
            for (int i = 0; i < 6; i++)
            {
                HeapRings.Step(fine, Told, 600, load, flow);
            }
        }

        Assert.Equal(HeapRings.ActiveZone(fine, Told.Shape), HeapRings.ActiveZone(coarse, Told.Shape), 0.1);
        Assert.Equal(fine[HeapShape.Sleeve], coarse[HeapShape.Sleeve], 0.3);
    }

    [Fact]
    public void Step_WaterAtAnyFlow_NeverCoolsTheBedBelowTheWater()
    {
        foreach (double flow in (double[])[0.1, 10, 280, 5000])
        {
            double[] t = Warm();
            for (int i = 0; i < 400; i++)
            {
                HeapStep step = HeapRings.Step(t, Dead, 3600, new HeapLoad(0, 0, 0, 15, 15), new HeapFlow(flow, 15));
                Assert.True(step.WaterWatts >= 0);
            }

            Assert.All(t, x => Assert.InRange(x, 15 - 1e-6, 60));
        }
    }

    [Fact]
    public void Step_LitHeapLeftAlone_SettlesWhereMicrobesAreSlowedByTheirOwnHeat()
    {
        double[] t = Warm();
        for (int i = 0; i < 24 * 40; i++)
        {
            HeapRings.Step(t, Told, 3600, new HeapLoad(0, 0, 0, 5, 9));
        }

        Assert.InRange(HeapRings.ActiveZone(t, Told.Shape), 58.6, 71.6);
    }

    [Fact]
    public void NetHeat_OfAWholeHeap_IsMostNearTheBestTemperatureAndLessWhenCool()
    {
        double NetAt(double celsius) =>
            HeapRings.Step(Level(celsius), Told with { CoverM2KPerW = 1e9 }, 600, new HeapLoad(0, 0, 0, 5, celsius)).NetWatts;
        Assert.True(NetAt(55) > NetAt(35));
        Assert.True(NetAt(35) > NetAt(20));
        Assert.True(NetAt(55) > NetAt(70));
    }

    [Fact]
    public void ActiveZone_LevelFall_IsTheMeanOfTheHotterHalf()
    {
        double[] t = Level(40);
        double[] weights = new double[HeapShape.Nodes];
        Assert.Equal(40, HeapRings.ActiveZone(t, Told.Shape, weights), 1e-9);
        Assert.Equal(1, weights.Sum(), 1e-9);
        for (int i = 0; i < HeapShape.Rings; i++)
        {
            t[i] = 60 - i;
        }

        double zone = HeapRings.ActiveZone(t, Told.Shape, weights);
        Assert.Equal(zone, weights.Zip(t).Sum(x => x.First * x.Second), 1e-9);
        Assert.Equal(0, weights[HeapShape.Sleeve]);
        Assert.Equal(0, weights[HeapShape.Drum]);
    }

    [Fact]
    public void Reach_IsWhatAShortStepOfFlowTakes()
    {
        double[] t = Warm();
        HeapFlow flow = new(278, 18);
        (double coil, double drum) = HeapRings.Reach(t, Told, flow);
        HeapStep step = HeapRings.Step(t, Told, 1, default, flow);
        Assert.Equal(coil, step.CoilWatts, 0.02 * coil);
        Assert.Equal(drum, step.DrumWatts, 0.02 * drum);
        Assert.Equal((0.0, 0.0), HeapRings.Reach(t, Told, default));
    }

    private static double[] Level(double celsius) => [.. Enumerable.Repeat(celsius, HeapShape.Nodes)];

    private static double[] Warm()
    {
        double[] t = Level(58);
        for (int i = 0; i < HeapShape.Rings; i++)
        {
            t[i] = 60 - (0.3 * i * i);
        }

        return t;
    }
}
