using PileController.Control.Readings;
using PileController.Rigs.Simulated;

namespace PileController.Rigs.Tests.Simulated;

public class ProbeErrorsTests
{
    private static readonly Channel[] Thermometers =
        [.. ChannelTable.All.Where(info => info.Unit == "°C").Select(info => info.Channel)];

    // SEN-020: DS18B20 accuracy ±0.5 °C from -10 to +85 °C, data sheet rev 042208.
    private const double ToleranceKelvin = 0.5;

    [Fact]
    public void OffsetOf_ManySeeds_StaysInToleranceAndUsesIt()
    {
        double widest = 0;
        for (ulong seed = 0; seed < 500; seed++)
        {
            foreach (Channel channel in Thermometers)
            {
                widest = Math.Max(widest, Math.Abs(ProbeErrors.OffsetOf(channel, seed)));
            }
        }

        Assert.InRange(widest, 0.3, ToleranceKelvin);
    }

    [Fact]
    public void OffsetOf_SupplyAndReturn_ArePaired()
    {
        double widest = 0;
        for (ulong seed = 0; seed < 500; seed++)
        {
            double apart = ProbeErrors.OffsetOf(Channel.Supply, seed) - ProbeErrors.OffsetOf(Channel.Return, seed);
            widest = Math.Max(widest, Math.Abs(apart));
        }

        Assert.InRange(widest, 0.1, 0.15);
    }

    [Fact]
    public void OffsetOf_SameSeed_IsTheSameProbe()
    {
        Assert.Equal(ProbeErrors.OffsetOf(Channel.House, 3), ProbeErrors.OffsetOf(Channel.House, 3));
        Assert.NotEqual(ProbeErrors.OffsetOf(Channel.House, 3), ProbeErrors.OffsetOf(Channel.House, 4));
        Assert.NotEqual(ProbeErrors.OffsetOf(Channel.House, 3), ProbeErrors.OffsetOf(Channel.Floor, 3));
    }

    [Fact]
    public void GainOf_FlowMeter_StaysWithinItsClass()
    {
        // SEN-051: EN 1434-1 class 2, 2 % near the rated flow.
        double widest = 0;
        for (ulong seed = 0; seed < 500; seed++)
        {
            widest = Math.Max(widest, Math.Abs(ProbeErrors.GainOf(Channel.Flow, seed) - 1));
        }

        Assert.InRange(widest, 0.015, 0.02);
    }
}
