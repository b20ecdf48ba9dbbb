using PileController.Physics.Hydraulics;

namespace PileController.Physics.Tests.Hydraulics;

public class AirPurgeTests
{
    [Fact]
    public void LeastFlow_OfHalfInchPex_IsALittleOverAGallonPerMinute()
    {
        // By hand: π/4 · (0.475 in)² · 2 ft/s = 4.253 in³/s, over 231 in³ = 1.105 US gal/min (2 ft/s: common practice, no source).
        double least = AirPurge.LeastFlowLitresPerMinute(PipeSize.Named("1/2 in PEX").InnerDiameterM);
        Assert.Equal(1.105, least / 3.785411784, 1e-3);
    }

    [Theory]
    [InlineData(0.99, false)]
    [InlineData(1.01, true)]
    public void Purges_AboutTheLeastFlow_TurnsThere(double share, bool purges)
    {
        double flow = share * AirPurge.LeastFlowLitresPerMinute(0.02);
        Assert.Equal(purges, AirPurge.Purges(Flow.VelocityMPerS(flow, 0.02)));
    }
}
