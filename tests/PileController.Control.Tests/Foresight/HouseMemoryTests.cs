using PileController.Control.Decisions;
using PileController.Control.Foresight;
using PileController.Control.Readings;
using PileController.Control.Tests.Support;
using PileController.Physics;

namespace PileController.Control.Tests.Foresight;

public sealed class HouseMemoryTests
{
    private const long Start = 1_737_936_000_000; // 2025-01-27T00:00Z
    private static readonly ControlSettings Settings = new();

    [Theory]
    [InlineData(0.7)]
    [InlineData(1.0)]
    [InlineData(1.6)]
    public void Step_InAHouseThatLosesOtherwiseThanTold_LearnsItsLoss(double factor)
    {
        HouseMemory memory = Lived(factor, 0, 30, readSun: true);
        Assert.InRange(memory.LossFactor, factor - 0.12, factor + 0.12);
    }

    [Fact]
    public void Step_InAHouseThatLosesAThirdOfWhatWasTold_StaysAtItsBound() =>
        Assert.Equal(0.5, Lived(0.3, 0, 40, readSun: true).LossFactor, 1e-9);

    [Fact]
    public void Step_WithoutAProbeForTheSun_LearnsWhatEachHourGains()
    {
        HouseMemory memory = Lived(1, 2000, 20, readSun: false);

        Assert.InRange(memory.GainW[12], 1500, 2500);
        Assert.InRange(memory.GainW[2], -150, 150);
    }

    [Fact]
    public void Step_WithAProbeForTheSun_LearnsTheShareThatStays()
    {
        HouseMemory memory = Lived(1, 2000, 30, readSun: true);
        Assert.InRange(memory.Learned.SunFactor, 0.8, 1.2);
    }

    [Fact]
    public void Step_WithoutProbesForFloorAndTank_FollowsThemByTheModel()
    {
        HouseState truth = default;
        HouseMemory memory = Lived(1, 1000, 10, readSun: true, without: [Channel.Floor, Channel.Tank], last: s => truth = s);

        Assert.InRange(memory.FloorC - truth.FloorC, -1, 1);
        Assert.InRange(memory.TankC - truth.TankC, -1.5, 1.5);
    }

    [Fact]
    public void Step_WithinAnHour_MakesNothingAnew()
    {
        HouseMemory memory = HouseMemory.Step(Settings, HouseMemory.Fresh, Sound.Readings, default, false, 0, null, 10, At(0));
        WeatherMemory weather = WeatherMemory.Step(Settings, WeatherMemory.Fresh, 0, true, null, 10, At(0));
        long before = GC.GetAllocatedBytesForCurrentThread();
        for (int i = 1; i <= 300; i++)
        {
            memory = HouseMemory.Step(Settings, memory, Sound.Readings, default, false, 0, null, 10, At(i * 10));
            weather = WeatherMemory.Step(Settings, weather, 0, true, null, 10, At(i * 10));
        }

        Assert.Equal(before, GC.GetAllocatedBytesForCurrentThread());
        Assert.Equal((3010, 3010), (memory.Tally.Seconds, weather.Seconds));
    }

    private static Instant At(long seconds) => new(Start + (seconds * 1000), seconds * 1000, 0);

    // A true house of another loss, read through probes, in weather that goes up and down with the day.
    private static HouseMemory Lived(
        double factor, double noonW, int days, bool readSun, Channel[]? without = null, Action<HouseState>? last = null)
    {
        HouseMemory memory = HouseMemory.Fresh;
        HouseModel house = HouseModel.Of(Settings, memory) with
        {
            LossWPerK = factor * Settings.HouseLossWPerK,
            CurtainWPerK = factor * Settings.House.CurtainWPerK,
        };
        HouseState state = new(8, 9, 8);
        for (int minute = 0; minute < days * 1440; minute++)
        {
            double hour = minute % 1440 / 60.0;
            double outside = 2 + (4 * Portable.Cos(2 * Math.PI * (hour - 14) / 24));
            double gain = Math.Max(0, noonW * Portable.Cos(Math.PI * (hour - 12.5) / 9)) * (hour is > 8 and < 17 ? 1 : 0);
            double water = hour is < 7 or > 18 ? 900 : 0;
            RigReadings said = Sound.Readings.With(Channel.House, state.AirC).With(Channel.Floor, state.FloorC)
                .With(Channel.Tank, state.TankC).With(Channel.Sun, gain / Settings.House.SunM2);
            said = said.Without([.. without ?? [], .. readSun ? Array.Empty<Channel>() : [Channel.Sun]]);
            memory = HouseMemory.Step(
                Settings, memory, said, new MeteredDraw(water, 0, 0, 2, false), false, outside, null, 60, At(60L * minute));
            state = house.Step(state, 60, outside, gain, water, 0);
            last?.Invoke(state);
        }

        return memory;
    }
}
