using CsCheck;
using PileController.Physics.Houses;
using PileController.Physics.Plants;

namespace PileController.Physics.Tests.Houses;

public class DwellingTests
{
    private const double OutsideC = -5;

    // No curtain, no ground: all heat leaves through glazing and leaks.
    private static readonly HouseBuild Glass = new() { CurtainSaving = 0, GroundUWPerM2K = 0 };

    [Fact]
    public void SteadyHouse_UnderSteadyHeat_StandsAtHeatOverLossCoefficient()
    {
        Dwelling house = At(Glass, 8, 8);
        Run(house, 30 * 86_400, 10, 3000, OutsideC);
        Assert.Equal(OutsideC + (3000 / Glass.LossWPerK), house.AirC, 1e-6);
        Assert.Equal(house.AirC, house.FloorC, 1e-6);
    }

    [Fact]
    public void LossCoefficient_OfTheShippedHouse_IsGlazingAndLeaks()
    {
        // By hand: 62 m² × 3.3 W/(m²·K) + 0.33 Wh/(m³·K) × 70 m³ × 0.75 1/h.
        Assert.Equal(204.6 + 17.325, new HouseBuild().LossWPerK, 1e-9);
    }

    [Fact]
    public void Curtain_AtNight_SavesItsShareOfTheGlazing()
    {
        HouseBuild build = Glass with { CurtainSaving = 0.25 };
        Dwelling house = At(build, 8, 8);
        Run(house, 30 * 86_400, 10, 3000, OutsideC);
        Assert.Equal(OutsideC + (3000 / (build.LossWPerK - (0.25 * 204.6))), house.AirC, 1e-6);
    }

    [Fact]
    public void FreeHouse_CoolingAtNight_FollowsItsTwoExponentialsToFirstOrder()
    {
        double[] errors = [.. new[] { 40.0, 20, 10 }.Select(seconds =>
        {
            Dwelling house = At(Glass, 20, 15);
            Run(house, 6 * 3600, seconds, 0, OutsideC);
            (double airC, double floorC) = Known(20, 15, 6 * 3600);
            return Math.Max(Math.Abs(house.AirC - airC), Math.Abs(house.FloorC - floorC));
        })];
        Assert.InRange(errors[^1], 0, 0.01);
        Assert.All(errors.Zip(errors.Skip(1), (coarse, fine) => Math.Log2(coarse / fine)), order => Assert.InRange(order, 0.9, 1.1));
    }

    [Fact]
    public void Vents_OfASunlitHouse_KeepItNearTheirSetting()
    {
        Dwelling house = At(new HouseBuild(), 20, 15);
        for (int i = 0; i < 6 * 360; i++)
        {
            house.Step(10, 0, 15, 800);
        }

        Assert.InRange(house.AirC, 24, 27);
        Assert.True(house.Ledger.VentJ > 0);
    }

    [Fact]
    public void AnyHouse_InAnyWeather_StaysBetweenWhatSurroundsItAndCloses()
    {
        Gen<HouseBuild> builds = Gen.Select(
            Gen.Double[2, 2000], Gen.Double[0.5, 8], Gen.Double[1, 1000], Gen.Double[1000, 500_000], Gen.Double[1000, 2_000_000],
            Gen.Double[0.1, 50], Gen.Double[0, 10], Gen.Double[0, 0.8],
            (glazing, u, floor, air, soil, coupling, ground, saving) => new HouseBuild
            {
                GlazingAreaM2 = glazing,
                GlazingUWPerM2K = u,
                FloorAreaM2 = floor,
                AirNodeJPerM2K = air,
                FloorJPerM2K = soil,
                FloorUWPerM2K = coupling,
                GroundUWPerM2K = ground,
                CurtainSaving = saving,
            });
        Gen.Select(builds, Gen.Double[-30, 40], Gen.Double[-10, 40], Gen.Double[-10, 40]).Sample((build, outside, air, floor) =>
        {
            Dwelling house = At(build, air, floor);
            double beforeJ = house.StoredJ;
            double least = Math.Min(Math.Min(outside, build.GroundC), Math.Min(air, floor));
            double most = Math.Max(Math.Max(outside, build.GroundC), Math.Max(air, floor));
            for (int i = 0; i < 400; i++)
            {
                house.Step(10, 0, outside, 0);
                Assert.InRange(house.AirC, least - 1e-9, most + 1e-9);
                Assert.InRange(house.FloorC, least - 1e-9, most + 1e-9);
            }

            DwellingLedger sums = house.Ledger;
            double lostJ = sums.LossJ + sums.VentJ + sums.GroundJ;
            double scaleJ = Math.Abs(sums.LossJ) + Math.Abs(sums.VentJ) + Math.Abs(sums.GroundJ) + Math.Abs(beforeJ);
            Assert.Equal(beforeJ - house.StoredJ, lostJ, 1e-9 * scaleJ);
        }, iter: 300);
    }

    private static Dwelling At(HouseBuild build, double airC, double floorC) => new(build, new DwellingState(airC, floorC), default);

    private static void Run(Dwelling house, double span, double seconds, double heatW, double outsideC)
    {
        for (int i = 0; i < span / seconds; i++)
        {
            house.Step(seconds, heatW * seconds, outsideC, 0);
        }
    }

    // Two capacities in a row: x' = A x about the outside temperature, by the eigenvalues of the two-by-two matrix.
    private static (double AirC, double FloorC) Known(double airC, double floorC, double seconds)
    {
        double airJ = Glass.AirNodeJPerM2K * Glass.FloorAreaM2;
        double soilJ = Glass.FloorJPerM2K * Glass.FloorAreaM2;
        double link = Glass.FloorUWPerM2K * Glass.FloorAreaM2;
        double a = -(Glass.LossWPerK + link) / airJ;
        double b = link / airJ;
        double c = link / soilJ;
        double d = -link / soilJ;
        double middle = 0.5 * (a + d);
        double apart = Math.Sqrt((0.25 * (a - d) * (a - d)) + (b * c));
        double slow = middle + apart;
        double fast = middle - apart;
        double air = airC - OutsideC;
        double floor = floorC - OutsideC;

        // The part that decays slowly and the part that decays fast; an eigenvector of root r is (b, r − a).
        double p = (((a - fast) * air) + (b * floor)) / (slow - fast);
        double q = air - p;
        double pFloor = p * (slow - a) / b;
        double qFloor = q * (fast - a) / b;
        double slowLeft = Math.Exp(slow * seconds);
        double fastLeft = Math.Exp(fast * seconds);
        return (OutsideC + (p * slowLeft) + (q * fastLeft), OutsideC + (pFloor * slowLeft) + (qFloor * fastLeft));
    }
}
