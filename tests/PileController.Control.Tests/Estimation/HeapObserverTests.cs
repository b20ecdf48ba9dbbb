using System.Text.Json;
using PileController.Control.Estimation;
using PileController.Control.Readings;
using PileController.Control.Tests.Support;

namespace PileController.Control.Tests.Estimation;

/// <summary>
/// The observer beside a twin: the same kind of heap with figures of its own, drawn on by turns in weather that changes. What
/// it has to find out is known, so it can be asked how near it came and whether it said so.
/// </summary>
public sealed class HeapObserverTests
{
    private const int StepsADay = 144;
    private static readonly ControlSettings Settings = new();
    private static readonly HeapShape Shape = new(Settings);
    private static readonly HeapFigures Told = HeapFigures.Told(Settings, Shape);

    [Fact]
    public void Update_HeapUnlikeWhatIsTold_IsFoundAndItsBandHolds()
    {
        Twin twin = new(Told with
        {
            DemandWPerM3 = 70,
            PermeabilityM2 = 1.4e-9,
            CoverM2KPerW = 1.2,
            JPerM3K = 0.7 * Told.JPerM3K,
            CoilWPerK = 140,
        });
        int held = 0;
        int seen = 0;
        for (int i = 0; i < 40 * StepsADay; i++)
        {
            twin.Step();
            if (i > 5 * StepsADay)
            {
                seen++;
                held += Math.Abs(twin.BelievedZone - twin.TrueZone) <= 1.96 * twin.Sigma ? 1 : 0;
            }
        }

        Assert.True(held >= 0.9 * seen, $"{held} of {seen}");
        Assert.Equal(twin.TrueZone, twin.BelievedZone, 0.7);
        Assert.Equal(twin.NetW, twin.Belief.NetW, 80.0);
        HeapFigures found = twin.Belief.Learned(Told);
        Assert.InRange(found.JPerM3K / Told.JPerM3K, 0.55, 0.9);
        Assert.InRange(found.CoilWPerK, 105, 190);
        Assert.DoesNotContain(true, Enumerable.Range(0, HeapBelief.Probes).Select(twin.Belief.Doubts));
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    public void Update_AnySeed_CovarianceStaysSymmetricAndPositiveAndFiguresWithinReason(int seed)
    {
        Random random = new(seed);
        double Factor() => Math.Exp(random.NextDouble() - 0.5);
        Twin twin = new(Told with
        {
            DemandWPerM3 = Told.DemandWPerM3 * Factor(),
            PermeabilityM2 = Told.PermeabilityM2 * Factor(),
            CoverM2KPerW = Told.CoverM2KPerW * Factor(),
            JPerM3K = Told.JPerM3K * Factor(),
            CoilWPerK = Told.CoilWPerK * Factor(),
        });
        for (int i = 0; i < 10 * StepsADay; i++)
        {
            // Probes come and go.
            twin.Missing = [.. Enumerable.Range(0, HeapBelief.Probes).Where(_ => random.Next(3) == 0)];
            twin.Step();
        }

        Assert.All(twin.Belief.Mean, x => Assert.True(double.IsFinite(x)));
        Assert.All(twin.Belief.Mean.Take(HeapShape.Nodes), x => Assert.InRange(x, -30, 90));
        Assert.True(Cholesky(twin.Belief.Upper), "The covariance is not positive.");
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public void Update_OneProbeNeverFitted_BandStillHolds(int missing)
    {
        Twin twin = new(Told with { DemandWPerM3 = 90 }) { Missing = [missing] };
        int held = 0;
        for (int i = 0; i < 20 * StepsADay; i++)
        {
            twin.Step();
            held += i < 5 * StepsADay || Math.Abs(twin.BelievedZone - twin.TrueZone) <= 1.96 * twin.Sigma ? 1 : 0;
        }

        Assert.True(held >= 0.9 * 20 * StepsADay, $"{held} of {20 * StepsADay}");
    }

    [Fact]
    public void Update_AllProbesMissing_GrowsUnsureAndSureAgain()
    {
        Twin twin = new(Told);
        twin.Run(10);
        double sure = twin.Sigma;
        twin.Missing = [0, 1, 2, 3];
        twin.Run(3);
        double blind = twin.Sigma;
        Assert.True(blind > 1.3 * sure, $"{sure} K, then {blind} K");
        Assert.True(Math.Abs(twin.BelievedZone - twin.TrueZone) <= 3 * blind);
        twin.Missing = [];
        twin.Run(3);
        Assert.True(twin.Sigma < 0.9 * blind, $"{blind} K, then {twin.Sigma} K");
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    public void Update_DriftingProbe_RaisesDoubtOfThatProbeAndHardlyMovesTheZone(int probe)
    {
        Twin twin = new(Told);
        Twin beside = new(Told);
        twin.Run(10);
        beside.Run(10);
        Assert.DoesNotContain(true, Enumerable.Range(0, HeapBelief.Probes).Select(twin.Belief.Doubts));
        double doubtedFromK = double.NaN;
        for (int i = 0; i < 10 * StepsADay; i++)
        {
            twin.OffK[probe] = Math.Min(12, 4.0 * i / StepsADay);
            twin.Step();
            beside.Step();
            doubtedFromK = double.IsNaN(doubtedFromK) && twin.Belief.Doubts(probe) ? twin.OffK[probe] : doubtedFromK;

            // A mean of what four probes say would move by three.
            Assert.Equal(beside.BelievedZone, twin.BelievedZone, 2.5);
        }

        Assert.InRange(doubtedFromK, 1, 8);
        Assert.Equal(beside.BelievedZone, twin.BelievedZone, 1.0);
        for (int i = 0; i < HeapBelief.Probes; i++)
        {
            Assert.True(i == probe || !twin.Belief.Doubts(i));
        }
    }

    [Theory]
    [InlineData(0, 1, 6, -6, 0)]
    [InlineData(0, 1, 12, -12, 0)]
    [InlineData(1, 3, -4, 4, 0)]
    [InlineData(0, 1, 10, -10, 2)]
    [InlineData(0, 3, -8, 8, 0)]
    public void Update_TwoProbesThatLieToOppositeSides_AreNotTakenForAnUnevenHeap(int one, int other, double oneK, double otherK, double kelvinADay)
    {
        Twin twin = new(Told);
        twin.Run(10);
        Assert.True(Corroboration.Holds(twin.Belief, Sound.Readings));
        int seen = 0;
        int excused = 0;
        for (int i = 0; i < 8 * StepsADay; i++)
        {
            double share = kelvinADay > 0 ? Math.Min(1, kelvinADay * i / StepsADay / Math.Abs(oneK)) : 1;
            twin.OffK[one] = share * oneK;
            twin.OffK[other] = share * otherK;
            twin.Step();

            // Two that drift slowly look for days like a heap that warms within and cools without: neither is doubted then.
            bool doubted = twin.Belief.Doubts(one) && twin.Belief.Doubts(other) && Math.Abs(twin.OffK[one]) >= 4 && i >= StepsADay;
            seen += doubted ? 1 : 0;
            excused += doubted && Corroboration.Holds(twin.Belief, Sound.Readings) ? 1 : 0;
        }

        Assert.True(seen > StepsADay, $"{seen}");
        Assert.Equal(0, excused);
    }

    [Theory]
    [InlineData(0.7)]
    [InlineData(1.5)]
    public void Update_FlowThatNoMeterTells_IsFoundFromDrumAndHeap(double taken)
    {
        Twin twin = new(Told) { InferredFlow = taken };
        twin.Run(30);
        double found = twin.Belief.Learned(Told).InferredFlowFactor;

        // Half the way at least, in the right direction.
        Assert.True(Math.Log(found * taken) / Math.Log(taken) is > -0.5 and < 0.5, $"{found}");
        Assert.Equal(twin.TrueZone, twin.BelievedZone, 0.9);
    }

    [Theory]
    [InlineData(60, false)]
    [InlineData(12, true)]
    public void Update_HeapThatHasDried_IsForgottenToHaveOnceItIsAsColdAsOneBuiltAnew(double coreC, bool forgotten)
    {
        double[] spent = new double[HeapShape.Nodes];
        Array.Fill(spent, 0.2 * Told.JPerM3K, 0, HeapShape.Drum);
        Twin twin = new(Told, coreC);
        twin.Belief = twin.Belief with { SpentJPerM3K = spent };
        twin.Step();

        Assert.All(
            twin.Belief.SpentJPerM3K[..HeapShape.Drum],
            left => Assert.Equal(forgotten ? 0 : 0.2 * Told.JPerM3K, left, 0.001 * Told.JPerM3K));
    }

    [Fact]
    public void Update_SameInputs_SameBits()
    {
        Twin one = new(Told);
        Twin other = new(Told);
        one.Run(3);
        other.Run(3);
        Assert.Equal(JsonSerializer.Serialize(one.Belief), JsonSerializer.Serialize(other.Belief));
    }

    [Fact]
    public void Update_BeliefWrittenAndReadHalfWay_GoesOnToTheSameBits()
    {
        Twin one = new(Told);
        Twin other = new(Told);
        one.Run(2);
        other.Run(1);
        other.Belief = JsonSerializer.Deserialize<HeapBelief>(JsonSerializer.Serialize(other.Belief))!;
        other.Run(1);
        Assert.Equal(JsonSerializer.Serialize(one.Belief), JsonSerializer.Serialize(other.Belief));
    }

    [Fact]
    public void Update_Belief_IsWrittenWithinTenKilobytes()
    {
        Twin twin = new(Told);
        twin.Run(5);
        Assert.InRange(JsonSerializer.Serialize(twin.Belief).Length, 1, 10_000);
    }

    private static bool Cholesky(double[] upper)
    {
        const int n = HeapBelief.Size;
        double[] p = new double[n * n];
        Covariance.Unpack(upper, p);
        double[] l = new double[n * n];
        for (int i = 0; i < n; i++)
        {
            for (int j = 0; j <= i; j++)
            {
                double sum = p[(i * n) + j];
                for (int k = 0; k < j; k++)
                {
                    sum -= l[(i * n) + k] * l[(j * n) + k];
                }

                if (i == j && sum <= 0)
                {
                    return false;
                }

                l[(i * n) + j] = i == j ? Math.Sqrt(sum) : sum / l[(j * n) + j];
            }
        }

        return true;
    }

    private sealed class Twin
    {
        private readonly HeapFigures _true;
        private readonly double[] _t = new double[HeapShape.Nodes];
        private readonly double[] _constantK = [0.3, -0.2, 0.1, -0.3];
        private readonly Random _noise = new(17);
        private int _steps;

        public Twin(HeapFigures figures, double coreC = 60)
        {
            _true = figures;
            for (int i = 0; i < HeapShape.Nodes; i++)
            {
                _t[i] = i < HeapShape.Rings ? coreC - (0.14 * i * i) : coreC - 2;
            }

            Belief = HeapObserver.First(Settings, Shape, Read(), 5);
        }

        public HeapBelief Belief { get; set; }

        public int[] Missing { get; set; } = [];

        /// <summary>What is taken for the flow, as a multiple of it; 1 for one that is metered.</summary>
        public double InferredFlow { get; init; } = 1;

        public double[] OffK { get; } = new double[HeapBelief.Probes];

        public double NetW { get; private set; }

        public double TrueZone => HeapRings.ActiveZone(_t, Shape);

        public double BelievedZone => HeapRings.ActiveZone(Belief.Mean, Shape);

        public double Sigma
        {
            get
            {
                double[] weights = new double[HeapShape.Nodes];
                HeapRings.ActiveZone(Belief.Mean, Shape, weights);
                return Math.Sqrt(Covariance.Variance(Belief, weights));
            }
        }

        public void Run(int days)
        {
            for (int i = 0; i < days * StepsADay; i++)
            {
                Step();
            }
        }

        public void Step()
        {
            double hour = _steps % StepsADay / 6.0;
            double outside = 3 + (4 * Math.Sin(2 * Math.PI * hour / 24)) + (5 * Math.Sin(2 * Math.PI * _steps / (9.0 * StepsADay)));
            HeapFlow flow = hour < 8 ? new(200, 18) : default;
            HeapStep step = HeapRings.Step(_t, _true, 600, new HeapLoad(0, 0, 0, outside, Settings.House.GroundC), flow);
            NetW += 600.0 / 14_400 * (step.NetWatts - NetW);
            double flowed = InferredFlow * flow.WPerK * 600;
            HeapTally tally = new(
                600, InferredFlow * step.WaterWatts * 600, flowed, flowed * flow.ReturnC, 0, 0, outside * 600, InferredFlow == 1 ? 0 : 600, 0);
            Belief = HeapObserver.Update(Settings, Shape, Belief, tally, Read());
            _steps++;
        }

        private RigReadings Read()
        {
            RigReadings readings = Sound.Readings;
            double[] h = new double[HeapBelief.Size];
            double[] x = new double[HeapBelief.Size];
            _t.CopyTo(x, 0);
            for (int i = 0; i < HeapBelief.Probes; i++)
            {
                double noise = 0.06 * (_noise.NextDouble() - 0.5);
                double shown = ProbeSight.See(Settings, Shape, i, x, h) + _constantK[i] + OffK[i] + noise;
                readings = Missing.Contains(i)
                    ? readings.Without(ProbeSight.ChannelOf(i))
                    : readings.With(ProbeSight.ChannelOf(i), shown);
            }

            return readings;
        }
    }
}
