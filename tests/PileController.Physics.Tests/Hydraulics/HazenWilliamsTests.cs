using PileController.Physics.Hydraulics;

namespace PileController.Physics.Tests.Hydraulics;

/// <summary>The older formula knows no temperature: it must read low beside ours in cold water, by as much as is published.</summary>
public class HazenWilliamsTests
{
    [Theory]

    // HYD-030, 035, 040, 045: psi per 100 ft at 1 US gal/min, C = 150, computed from the formula of HYD-081
    // (a plastic-pipe association's water specification): 15 to 31 % under Darcy at 10 to 20 °C, 5 to 15 % at 40 °C.
    [InlineData("3/8 in PEX", 6.972)]
    [InlineData("1/2 in PEX", 1.5778)]
    [InlineData("3/4 in PEX", 0.2938)]
    [InlineData("1 in PEX", 0.0864)]
    public void Darcy_BesideHazenWilliams_IsTheGreater(string name, double hazenWilliamsPsi)
    {
        PipeRun run = new(30.48, PipeSize.Named(name).InnerDiameterM);
        double Ratio(double waterC) => hazenWilliamsPsi / (run.LossPa(3.785411784, waterC) / 6894.757293168);
        Assert.InRange(Ratio(10), 0.69, 0.85);
        Assert.InRange(Ratio(20), 0.69, 0.86);
        Assert.InRange(Ratio(40), 0.84, 0.95);
    }
}
