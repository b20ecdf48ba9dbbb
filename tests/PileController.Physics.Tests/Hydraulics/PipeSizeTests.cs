using PileController.Physics.Hydraulics;

namespace PileController.Physics.Tests.Hydraulics;

public class PipeSizeTests
{
    private const double Inch = 0.0254;

    [Theory]
    [InlineData("PEX 1/2 in", "1/2 in PEX")]
    [InlineData("pex 1/2\"", "1/2 in PEX")]
    [InlineData("1/2in PEX tubing", "1/2 in PEX")]
    [InlineData("0.5 inch pex", "1/2 in PEX")]
    [InlineData("PEX ½ in", "1/2 in PEX")]
    [InlineData("PEX 1 in", "1 in PEX")]
    [InlineData("copper 3/4 in", "3/4 in copper")]
    [InlineData("Cu 3/4 in", "3/4 in copper")]
    [InlineData("1/4 in OD copper", "1/4 in copper")]
    public void Named_InAnyOrder_IsTheSameTube(string written, string name) => Assert.Equal(name, PipeSize.Named(written).Name);

    [Theory]
    [InlineData("2 in PEX")]
    [InlineData("PEX")]
    [InlineData("1/2 in")]
    [InlineData("")]
    [InlineData("11/2 in PEX")]
    public void Find_OfNoSuchTube_IsNone(string written) => Assert.Null(PipeSize.Find(written));

    [Fact]
    public void All_UnderEveryName_FindThemselves() => Assert.All(PipeSize.All, size => Assert.Same(size, PipeSize.Named(size.Name)));

    [Theory]

    // HYD-005 to HYD-009: the largest bore that the least wall leaves, PEX CTS SDR-9 dimensions, county records scan;
    // the average may lie 0.013 in below (ASTM F876/F877 as quoted in a manufacturer's design manual p. 137).
    [InlineData("3/8 in PEX", 0.360)]
    [InlineData("1/2 in PEX", 0.485)]
    [InlineData("5/8 in PEX", 0.584)]
    [InlineData("3/4 in PEX", 0.681)]
    [InlineData("1 in PEX", 0.875)]
    public void AverageBore_OfPex_LiesUnderTheLargestByLessThanItsTolerance(string name, double largestInches) =>
        Assert.InRange(PipeSize.Named(name).InnerDiameterM / Inch, largestInches - 0.013, largestInches);
}
