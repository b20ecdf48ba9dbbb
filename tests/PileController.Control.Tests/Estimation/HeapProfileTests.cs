using PileController.Control.Estimation;
using PileController.Control.Readings;
using PileController.Control.Tests.Support;

namespace PileController.Control.Tests.Estimation;

public sealed class HeapProfileTests
{
    private static readonly HeapProbePlaces Places = new();

    [Fact]
    public void From_EvenHeapInEvenAir_IsThatTemperatureEverywhere()
    {
        HeapProfile profile = HeapProfile.From(Places, Heap(50, 50, 50, 50), 50);

        Assert.Equal(50, profile.ActiveZoneC, 1e-9);
        Assert.Equal(50, profile.BodyC, 1e-9);
        Assert.Equal(50, profile.CoreC, 1e-9);
        Assert.Equal(50, profile.TurnsC, 1e-9);
        Assert.Equal(4, profile.ProbesUsed);
    }

    [Fact]
    public void From_FallWithTheSquareOfTheRadius_IsTheExactMeans()
    {
        // 60 °C at the axis, less 8 K times the radius squared, as in a round body that makes its heat all through
        // (conduction with even generation); the core probe sits at the axis and the probe at the turns on the curve.
        HeapProbePlaces places = new() { CoreM = 1e-9, MiddleM = 0.7, TurnsM = 1.0, EdgeM = 1.8, RadiusM = 1.9 };
        HeapProfile profile = HeapProfile.From(places, Heap(60, 56.08, 52, 34.08), (2 * 31.12) - 34.08);

        // Mean over a disc: T0 - 8 R²/2. The hottest half of the area lies within R/sqrt(2); the body within 0.75 R.
        // Twenty-four rings take the means to a tenth of a kelvin.
        Assert.Equal(60 - (8 * 1.9 * 1.9 / 4), profile.ActiveZoneC, 0.1);
        Assert.Equal(60 - (8 * 1.9 * 1.9 * 0.75 * 0.75 / 2), profile.BodyC, 0.1);
        Assert.Equal(52, profile.TurnsC, 1e-9);
    }

    [Fact]
    public void From_ColdSleeveAtTheTurns_LeavesTheBedBeyondAHandsBreadthWarm()
    {
        HeapProfile warm = HeapProfile.From(Places, Heap(60, 60, 60, 60), 60);
        HeapProfile drawn = HeapProfile.From(Places, Heap(60, 60, 40, 60), 60);

        // The hottest half has room enough beside the sleeve; the sleeve itself is as cold as its probe says.
        Assert.Equal(warm.ActiveZoneC, drawn.ActiveZoneC, 0.5);
        Assert.Equal(40, drawn.TurnsC, 1e-9);
    }

    [Fact]
    public void From_ColdSleeveAtTheTurns_BodyFeelsItMoreThanTheHottestHalf()
    {
        HeapProfile warm = HeapProfile.From(Places, Heap(60, 60, 60, 45), 0);
        HeapProfile drawn = HeapProfile.From(Places, Heap(60, 60, 30, 45), 0);

        Assert.True(drawn.BodyC < warm.BodyC - 5, $"{warm.BodyC} to {drawn.BodyC}");
        Assert.True(drawn.BodyC < drawn.ActiveZoneC, $"{drawn.BodyC} against {drawn.ActiveZoneC}");
    }

    [Fact]
    public void From_ProbesNotInOrderOfRadius_IsTheSame()
    {
        HeapProfile inOrder = HeapProfile.From(Places, Heap(60, 58, 55, 40), 0);
        HeapProbePlaces swapped = Places with { CoreM = Places.MiddleM, MiddleM = Places.CoreM };
        HeapProfile other = HeapProfile.From(swapped, Heap(58, 60, 55, 40), 0);

        Assert.Equal(inOrder.ActiveZoneC, other.ActiveZoneC);
        Assert.Equal(inOrder.BodyC, other.BodyC);
    }

    [Theory]
    [InlineData(Channel.HeapCore)]
    [InlineData(Channel.HeapMiddle)]
    [InlineData(Channel.HeapTurns)]
    [InlineData(Channel.HeapEdge)]
    public void From_OneProbeMissing_StaysNearTheWhole(Channel missing)
    {
        RigReadings readings = Heap(60, 58, 55, 40);
        HeapProfile whole = HeapProfile.From(Places, readings, 0);
        HeapProfile without = HeapProfile.From(Places, readings.Without(missing), 0);

        Assert.Equal(3, without.ProbesUsed);
        Assert.Equal(whole.ActiveZoneC, without.ActiveZoneC, 3.0);
        Assert.Equal(whole.BodyC, without.BodyC, 3.0);
    }

    [Fact]
    public void From_NoProbe_SaysSo() => Assert.Equal(0, HeapProfile.From(Places, RigReadings.None, 5).ProbesUsed);

    private static RigReadings Heap(double core, double middle, double turns, double edge) => Sound.Readings
        .With(Channel.HeapCore, core).With(Channel.HeapMiddle, middle).With(Channel.HeapTurns, turns).With(Channel.HeapEdge, edge);
}
