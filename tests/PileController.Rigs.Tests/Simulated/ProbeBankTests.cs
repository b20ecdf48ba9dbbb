using CsCheck;
using PileController.Control.Readings;
using PileController.Rigs.Simulated;

namespace PileController.Rigs.Tests.Simulated;

public class ProbeBankTests
{
    private static readonly Channel[] Thermometers =
        [.. ChannelTable.All.Where(info => info.Unit == "°C").Select(info => info.Channel)];

    private static readonly Gen<Channel> Thermometer = Gen.Int[0, Thermometers.Length - 1].Select(i => Thermometers[i]);

    [Theory]
    [InlineData(Channel.HeapCore, 120)]
    [InlineData(Channel.Supply, 15)]
    [InlineData(Channel.House, 60)]
    public void Follow_StepOfTheTruth_ReachesOneMinusOneOverEAfterItsTimeConstant(Channel channel, double lagSeconds)
    {
        FakePlant plant = new() { [channel] = 10 };
        ProbeBank bank = new([new ProbeFit(channel)], 1, plant);
        plant[channel] = 60;

        for (int i = 0; i < 30; i++)
        {
            bank.Follow(plant, lagSeconds / 30);
        }

        // Closed form of the first-order lag: 1 - 1/e of the step after one time constant.
        Assert.Equal(10 + (50 * (1 - Math.Exp(-1))), bank.Export()[0].Value, 9);
    }

    [Fact]
    public void Fill_SteadyTruth_HasNoiseOfTheStatedSizeAroundAFixedOffset()
    {
        const int ticks = 50_000;
        FakePlant plant = new() { [Channel.House] = 12.34 };
        ProbeBank bank = new([new ProbeFit(Channel.House)], 5, plant);
        double[] shown = new double[ticks];
        Reading[] readings = new Reading[ChannelTable.Count];
        for (int tick = 0; tick < ticks; tick++)
        {
            bank.Fill(readings, tick);
            shown[tick] = readings[(int)Channel.House].ValueOf(Channel.House);
        }

        double mean = shown.Average();
        double sigma = Math.Sqrt(shown.Average(value => (value - mean) * (value - mean)));

        // Noise of 0.03 K and, as of every even grain, 1/(16·√12) K: together 0.0350 K. Four standard errors are
        // 0.0007 K for the mean; noise of half a grain leaves up to 0.004 K of the grain in the mean.
        Assert.Equal(12.34 + ProbeErrors.OffsetOf(Channel.House, 5), mean, 0.005);
        Assert.InRange(sigma, 0.030, 0.040);
    }

    [Fact]
    public void Fill_AnyThermometerAnySeed_ErrsNoMoreThanItsTolerance() =>
        Gen.Select(Thermometer, Gen.Double[-10, 85], Gen.Long[0, 1_000_000], Gen.Long).Sample((channel, truth, tick, seed) =>
        {
            FakePlant plant = new() { [channel] = truth };
            ProbeBank bank = new([new ProbeFit(channel)], seed, plant);
            Reading[] readings = new Reading[ChannelTable.Count];
            bank.Fill(readings, tick);

            // SEN-020: ±0.5 °C, all causes together.
            Assert.InRange(readings[(int)channel].ValueOf(channel), truth - 0.5, truth + 0.5);
        });

    [Fact]
    public void Fill_CalibratedProbe_IsMovedByItsCalibration()
    {
        FakePlant plant = new() { [Channel.Tank] = 30 };
        Reading[] plain = new Reading[ChannelTable.Count];
        Reading[] calibrated = new Reading[ChannelTable.Count];
        new ProbeBank([new ProbeFit(Channel.Tank)], 1, plant).Fill(plain, 3);
        new ProbeBank([new ProbeFit(Channel.Tank, OffsetKelvin: -0.25)], 1, plant).Fill(calibrated, 3);

        Assert.Equal(plain[(int)Channel.Tank].Quanta - 4, calibrated[(int)Channel.Tank].Quanta);
    }

    [Theory]
    [InlineData(400, 125)]
    [InlineData(-200, -55)]
    public void Fill_TruthBeyondThePart_ShowsTheEndOfItsRange(double truth, double expected)
    {
        FakePlant plant = new() { [Channel.DuctAir] = truth };
        Reading[] readings = new Reading[ChannelTable.Count];
        new ProbeBank([new ProbeFit(Channel.DuctAir)], 1, plant).Fill(readings, 0);

        Assert.Equal(expected, readings[(int)Channel.DuctAir].ValueOf(Channel.DuctAir));
    }

    [Theory]
    [InlineData(0, 0)]
    [InlineData(0.49, 0)]
    [InlineData(0.5, 1)]
    [InlineData(1, 1)]
    public void Fill_Switch_IsZeroOrOneWithoutNoise(double truth, int expected)
    {
        FakePlant plant = new() { [Channel.Level] = truth };
        ProbeBank bank = new([new ProbeFit(Channel.Level)], 1, plant);
        Reading[] readings = new Reading[ChannelTable.Count];
        for (int tick = 0; tick < 100; tick++)
        {
            bank.Fill(readings, tick);
            Assert.Equal(new Reading(expected, ReadingQuality.Good, 0), readings[(int)Channel.Level]);
        }
    }

    [Fact]
    public void Fill_PumpOff_ReadsNearlyNoPower()
    {
        FakePlant plant = new();
        Reading[] readings = new Reading[ChannelTable.Count];
        new ProbeBank([new ProbeFit(Channel.PumpPower)], 1, plant).Fill(readings, 0);

        Assert.InRange(readings[(int)Channel.PumpPower].ValueOf(Channel.PumpPower), 0, 0.25);
    }

    // What was recorded before there were later channels comes again to the bit.
    [Fact]
    public void Fill_FirstChannels_HaveTheNoiseOfAStreamOfEighteen()
    {
        FakePlant plant = new() { [Channel.House] = 12.34 };
        ProbeBank alone = new([new ProbeFit(Channel.House)], 5, plant);
        ProbeBank among = new([new ProbeFit(Channel.SpareOne), new ProbeFit(Channel.House), new ProbeFit(Channel.CarbonDioxide)], 5, plant);
        Reading[] readings = new Reading[ChannelTable.Count];
        Reading[] others = new Reading[ChannelTable.Count];
        for (int tick = 0; tick < 1000; tick++)
        {
            alone.Fill(readings, tick);
            among.Fill(others, tick);
            double noise = 0.03 * SplitMix64.NearNormal(SplitMix64.At(5, (18UL * (ulong)tick) + (ulong)Channel.House));
            int quanta = (int)Math.Round((12.34 + ProbeErrors.OffsetOf(Channel.House, 5) + noise) * 16, MidpointRounding.AwayFromZero);

            Assert.Equal(quanta, readings[(int)Channel.House].Quanta);
            Assert.Equal(quanta, others[(int)Channel.House].Quanta);
        }
    }

    [Fact]
    public void Fill_LaterChannels_HaveNoNoiseInCommonWithTheFirst()
    {
        FakePlant plant = new();
        ProbeBank bank = new([.. Enum.GetValues<Channel>().Where(c => ChannelTable.Of(c).Unit == "°C").Select(c => new ProbeFit(c))], 3, plant);
        Reading[][] said = [.. Enumerable.Range(0, 500).Select(tick =>
        {
            Reading[] readings = new Reading[ChannelTable.Count];
            bank.Fill(readings, tick);
            return readings;
        })];

        for (Channel later = Channel.SpareOne; later <= Channel.SpareFour; later++)
        {
            Assert.All(
                Enum.GetValues<Channel>().Where(other => ChannelTable.Of(other).Unit == "°C" && other != later),
                other => Assert.InRange(Correlation(said, later, other), -0.2, 0.2));
        }
    }

    [Fact]
    public void Restore_OfBeforeAProbeWasFitted_LeavesThatOneAsItHangs()
    {
        FakePlant plant = new() { [Channel.House] = 8, [Channel.SpareOne] = 55 };
        ProbeBank bank = new([new ProbeFit(Channel.House), new ProbeFit(Channel.SpareOne)], 1, plant);

        bank.Restore([new LaggedProbe(Channel.House, 3)]);

        Assert.Equal([new LaggedProbe(Channel.House, 3), new LaggedProbe(Channel.SpareOne, 55)], bank.Export());
    }

    private static double Correlation(Reading[][] said, Channel one, Channel other)
    {
        double[] x = [.. said.Select(readings => (double)readings[(int)one].Quanta)];
        double[] y = [.. said.Select(readings => (double)readings[(int)other].Quanta)];
        double Spread(double[] a, double[] b) => a.Zip(b).Sum(pair => (pair.First - a.Average()) * (pair.Second - b.Average()));
        double scale = Math.Sqrt(Spread(x, x) * Spread(y, y));
        return scale == 0 ? 0 : Spread(x, y) / scale;
    }

    [Fact]
    public void Restore_OtherProbes_SaysWhichAreFitted()
    {
        FakePlant plant = new();
        ProbeBank bank = new([new ProbeFit(Channel.House)], 1, plant);

        ArgumentException error = Assert.Throws<ArgumentException>(() => bank.Restore([new LaggedProbe(Channel.Floor, 3)]));
        Assert.Contains("House", error.Message, StringComparison.Ordinal);
        Assert.Contains("Floor", error.Message, StringComparison.Ordinal);
    }
}
