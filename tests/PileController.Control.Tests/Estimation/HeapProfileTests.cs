using PileController.Control.Estimation;

namespace PileController.Control.Tests.Estimation;

public class HeapProfileTests
{
    private static readonly HeapShape Shape = new(new ControlSettings());

    [Fact]
    public void Of_AMemoryWithABelief_HasItsRingsFromTheMiddleOut()
    {
        HeapBelief belief = new() { Mean = [.. Enumerable.Range(0, HeapBelief.Size).Select(i => 60.0 - i)] };
        Memory memory = Memory.Fresh with { Estimator = Memory.Fresh.Estimator with { Belief = belief } };

        HeapProfile profile = HeapProfile.Of(Shape, memory)!;

        Assert.Equal(HeapShape.Rings, profile.RadiusM.Count);
        Assert.Equal(profile.RadiusM.Order(), profile.RadiusM);
        Assert.All(profile.RadiusM, radius => Assert.InRange(radius, Shape.InnerM, Shape.RadiusM));
        Assert.Equal(belief.Mean.Take(HeapShape.Rings), profile.Celsius);
    }

    [Fact]
    public void Of_AFreshMemory_IsNone()
    {
        Assert.Null(HeapProfile.Of(Shape, Memory.Fresh));
    }
}
