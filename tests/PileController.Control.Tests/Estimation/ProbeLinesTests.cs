using PileController.Control.Estimation;
using PileController.Control.Readings;
using PileController.Control.Tests.Support;

namespace PileController.Control.Tests.Estimation;

public sealed class ProbeLinesTests
{
    private static readonly HeapProbePlaces Places = new();

    [Theory]
    [InlineData(0.2)]
    [InlineData(1.0)]
    [InlineData(1.85)]
    public void At_LevelHeapInAirAsWarm_IsLevel(double radiusM) =>
        Assert.Equal(50, ProbeLines.At(Places, Heap(50, 50, 50, 50), 50, radiusM), 1e-9);

    [Theory]
    [InlineData(0.6)]
    [InlineData(1.2)]
    [InlineData(1.5)]
    public void At_BodyThatMakesItsHeatAllThrough_IsHit(double radiusM)
    {
        // 62 °C at the axis, falling with the square of the radius.
        static double T(double r) => 62 - (8 * r * r);
        RigReadings readings = Heap(T(Places.CoreM), T(Places.MiddleM), T(Places.TurnsM), T(Places.EdgeM));
        // Readings come in steps of a sixteenth or finer; lines carry that on.
        Assert.Equal(T(radiusM), ProbeLines.At(Places, readings, 0, radiusM), 0.05);
    }

    [Fact]
    public void At_TurnsChilledByADraw_IsNotMovedWhereOthersTell() => Assert.Equal(
        ProbeLines.At(Places, Heap(60, 58, 55, 40), 0, 1.0), ProbeLines.At(Places, Heap(60, 58, 20, 40), 0, 1.0));

    [Fact]
    public void At_OnlyTheTurnsLeft_TakesTheirWord() => Assert.Equal(
        55, ProbeLines.At(Places, Heap(60, 58, 55, 40).Without(Channel.HeapCore, Channel.HeapMiddle, Channel.HeapEdge), 0, 0.3));

    [Fact]
    public void At_PlacesInAnyOrder_IsTheSame()
    {
        HeapProbePlaces swapped = Places with { CoreM = Places.MiddleM, MiddleM = Places.CoreM };
        Assert.Equal(
            ProbeLines.At(Places, Heap(60, 58, 55, 40), 0, 0.6), ProbeLines.At(swapped, Heap(58, 60, 55, 40), 0, 0.6));
    }

    [Fact]
    public void At_NoProbe_IsTheAirOutside() => Assert.Equal(5, ProbeLines.At(Places, RigReadings.None, 5, 1));

    private static RigReadings Heap(double core, double middle, double turns, double edge) => Sound.Readings
        .With(Channel.HeapCore, core).With(Channel.HeapMiddle, middle).With(Channel.HeapTurns, turns).With(Channel.HeapEdge, edge);
}
