using PileController.Control.Estimation;

namespace PileController.Control.Tests.Estimation;

public sealed class HeapShapeTests
{
    [Theory]
    [InlineData(0.55)]
    [InlineData(0.63)]
    [InlineData(1.2)]
    public void DuctShare_DuctsBetweenTwoRings_HasItsCentreWhereTheyLie(double radiusM)
    {
        HeapShape shape = new(new ControlSettings { DuctRadiusM = radiusM });
        double sum = 0;
        double centreM = 0;
        for (int i = 0; i < HeapShape.Rings; i++)
        {
            sum += shape.DuctShare[i];
            centreM += shape.DuctShare[i] * shape.CentreM(i);
        }

        Assert.Equal(1, sum, 1e-12);
        Assert.Equal(radiusM, centreM, 1e-12);
    }

    [Theory]
    [InlineData(0.01, 0)]
    [InlineData(9, HeapShape.Rings - 1)]
    public void DuctShare_DuctsBesideTheBed_FallsToTheNearestRing(double radiusM, int ring) =>
        Assert.Equal(1, new HeapShape(new ControlSettings { DuctRadiusM = radiusM }).DuctShare[ring]);
}
