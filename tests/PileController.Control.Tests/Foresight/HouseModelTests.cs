using PileController.Control.Foresight;

namespace PileController.Control.Tests.Foresight;

public sealed class HouseModelTests
{
    private static readonly HouseModel Model = HouseModel.Of(new ControlSettings(), HouseMemory.Fresh);

    [Fact]
    public void Step_ByHoursOrByMinutes_ComesToNearlyTheSameNight()
    {
        Random random = new(20_25);
        for (int i = 0; i < 300; i++)
        {
            HouseState slow = new(5 + (15 * random.NextDouble()), 5 + (10 * random.NextDouble()), 5 + (40 * random.NextDouble()));
            HouseState fine = slow;
            double outside = -15 + (20 * random.NextDouble());
            double gain = random.Next(2) * 1500 * random.NextDouble();
            double water = random.Next(2) * 2000 * random.NextDouble();
            double air = random.Next(2) * 400 * random.NextDouble();
            for (int hour = 1; hour <= 12; hour++)
            {
                slow = Model.Step(slow, 3600, outside, gain, water, air);
                for (int minute = 0; minute < 60; minute++)
                {
                    fine = Model.Step(fine, 60, outside, gain, water, air);
                }

                // A sudden change shows an hour late; it leaves nothing behind.
                double apart = hour < 4 ? 4 : 0.8;
                Assert.InRange(slow.AirC - fine.AirC, -apart, apart);
            }
        }
    }

    [Fact]
    public void Step_LeftAlone_SettlesWhereAllThatComesInGoesOut()
    {
        HouseState settled = Lived(new HouseState(10, 10, 10), 3000, 0, 400, 900, 300);

        double lost = (Model.LossWPerK * settled.AirC) + (Model.GroundWPerK * (settled.FloorC - Model.GroundC));
        Assert.Equal(400 + 900 + 300, lost, 1.0);
        Assert.True(settled.TankC > settled.AirC);
    }

    [Fact]
    public void Step_Drawing_GivesPartAtOnceAndPartLater()
    {
        HouseState start = new(8, 8, 8);
        HouseState cold = Model.Step(start, 3600, 0, 0, 0, 0);
        HouseState drawn = Model.Step(start, 3600, 0, 0, 1000, 0);
        HouseState blown = Model.Step(start, 3600, 0, 0, 0, 1000);

        Assert.InRange(drawn.AirC - cold.AirC, 0.3 * (blown.AirC - cold.AirC), 0.95 * (blown.AirC - cold.AirC));
        double stored = Model.TankJPerK * (drawn.TankC - cold.TankC);
        Assert.InRange(stored, 0.1 * 3.6e6, 0.6 * 3.6e6);
    }

    [Fact]
    public void Step_InStrongSun_IsHeldByTheVents()
    {
        HouseState noon = Lived(new HouseState(15, 12, 15), 6, 10, 9000, 0, 0);
        Assert.InRange(noon.AirC, Model.VentAboveC, Model.VentAboveC + 8);
    }

    [Fact]
    public void Step_AtNight_LosesLessUnderTheCurtain()
    {
        HouseState start = new(10, 10, 10);
        double drawn = Model.Step(start, 3600, 0, 0, 0, 0).AirC;
        double open = (Model with { CurtainWPerK = 0 }).Step(start, 3600, 0, 0, 0, 0).AirC;
        Assert.True(drawn > open + 0.3, $"{drawn} under the curtain, {open} without");
    }

    private static HouseState Lived(HouseState state, int hours, double outsideC, double gainW, double waterW, double airW)
    {
        for (int i = 0; i < hours; i++)
        {
            state = Model.Step(state, 3600, outsideC, gainW, waterW, airW);
        }

        return state;
    }
}
