using PileController.Control.Estimation;
using PileController.Control.Foresight;

namespace PileController.Control.Tests.Foresight;

public sealed class HorizonTests
{
    private const int Hours = 48;
    private static readonly ControlSettings Settings = new();
    private static readonly HeapShape Shape = new(Settings);
    private static readonly HeapFigures Told = HeapFigures.Told(Settings, Shape);

    [Fact]
    public void Solve_MildHoursAndAHotHeap_StaysWithTheUsualCourse() =>
        Assert.Equal(Course.Usual, Solve(heapC: 62, outsideC: _ => 6, reserveKelvin: 4).Course);

    [Fact]
    public void Solve_ColdSpellTomorrowAndLittleHeat_GivesNoComfortBeforeIt() =>
        Assert.False(Solve(heapC: 50.5, outsideC: h => h < 16 ? 7 : -9, reserveKelvin: 4).Course.Comfort);

    [Fact]
    public void Solve_SpellThatTheWaterCannotMeet_TakesTheAirToo() =>
        Assert.Contains(Solve(heapC: 66, outsideC: _ => -14, reserveKelvin: 4).Plan.AirW, w => w > 500);

    [Theory]
    [InlineData(-1)]
    [InlineData(-2)]
    [InlineData(-4)]
    public void Solve_HeapShortOfTheSeasonsReserve_HoldsTheHouseCloseToItsMinimum(double outsideC) =>
        Assert.Equal(Course.Thrifty, Solve(heapC: 56, outsideC: _ => outsideC, reserveKelvin: 18).Course);

    [Fact]
    public void Solve_HeapAboveTheSeasonsReserve_DoesNot() =>
        Assert.NotEqual(Course.Thrifty, Solve(heapC: 66, outsideC: _ => -4, reserveKelvin: 4).Course);

    [Fact]
    public void Solve_SpellThatLeavesTheHouseCold_HoldsItCloserStill() =>
        Assert.Equal(Course.Spell, Solve(heapC: 49, outsideC: _ => -9, reserveKelvin: 18).Course);

    [Fact]
    public void Solve_SpellThatIsOver_HoldsItSoNoLonger() =>
        Assert.NotEqual(Course.Spell, Solve(heapC: 56, outsideC: _ => -1, reserveKelvin: 18, kept: Course.Spell).Course);

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Solve_AtTheEdgeOfASpell_KeepsToWhatItIsAt(bool within)
    {
        // The outside at which the thrifty course leaves three quarters of what makes a spell.
        double outside = Enumerable.Range(0, 2000).Select(i => -0.01 * i).First(c => Thrifty(c) >= 0.75);
        Course kept = within ? Course.Spell : Course.Thrifty;

        Assert.InRange(Thrifty(outside), 0.75, 0.95);
        Assert.Equal(kept, Solve(heapC: 53, outsideC: _ => outside, reserveKelvin: 18, kept: kept).Course);

        static double Thrifty(double outsideC) => CourseRoll.Live(Task(53, _ => outsideC, 18, Told), Course.Thrifty).ColdDegreeHours;
    }

    [Fact]
    public void Solve_AnyHours_ForetellsAHouseNoColderThanWithoutDraw()
    {
        (_, Lived plan) = Solve(heapC: 60, outsideC: h => -4 + (4 * Math.Sin(h / 3.8)), reserveKelvin: 4);
        HouseModel model = HouseModel.Of(Settings, HouseMemory.Fresh);
        HouseState idle = new(6, 9, 12);
        for (int h = 0; h < Hours; h++)
        {
            idle = model.Step(idle, 3600, -4 + (4 * Math.Sin(h / 3.8)), 0, 0, 0);
            Assert.True(plan.HouseC[h] >= idle.AirC - 1e-9);
            Assert.True(plan.WaterW[h] >= 0 && plan.AirW[h] >= 0);
        }

        Assert.Equal(Hours, plan.HouseC.Length);
    }

    [Fact]
    public void Solve_HeapAtItsFloor_PlansNoDraw()
    {
        (_, Lived plan) = Solve(heapC: 44, outsideC: _ => -6, reserveKelvin: 4, figures: Told with { DemandWPerM3 = 0 });

        Assert.All(plan.WaterW, w => Assert.Equal(0, w));
        Assert.All(plan.AirW, w => Assert.Equal(0, w));
    }

    [Fact]
    public void Solve_LongSpell_SpendsTheReserveAndStopsAtTheMargin()
    {
        (_, Lived plan) = Solve(heapC: 51, outsideC: _ => -12, reserveKelvin: 4);
        double[] t = Level(51);
        for (int h = 0; h < Hours; h++)
        {
            HeapRings.Step(t, Told, 3600, new HeapLoad(plan.WaterW[h], 0, plan.AirW[h], -12, 9));
        }

        // What the zone still falls by at rest belongs to what was spent; the margin stands a kelvin above the floor.
        double zone = HeapRings.ActiveZone(t, Shape);
        double settled = zone - (CourseRoll.SettlingShare * Math.Max(0, zone - HeapRings.Body(t, Shape)));
        Assert.InRange(settled, 45, 47);
        Assert.InRange(RestRoll.LeastZoneC(t, Told, -12, 9, Hours), 45, zone);
    }

    [Fact]
    public void Solve_Twice_GivesTheSameBits()
    {
        (Course one, Lived first) = Solve(58, h => -h / 6.0, 18);
        (Course two, Lived second) = Solve(58, h => -h / 6.0, 18);

        Assert.Equal(one, two);
        Assert.Equal(first.HouseC, second.HouseC);
        Assert.Equal(first.WaterW, second.WaterW);
    }

    private static (Course Course, Lived Plan) Solve(
        double heapC, Func<int, double> outsideC, double reserveKelvin, HeapFigures? figures = null, Course? kept = null)
    {
        HorizonTask task = Task(heapC, outsideC, reserveKelvin, figures ?? Told);
        Course course = Horizon.Solve(task, kept ?? Course.Usual);
        Lived lived = new(new double[Hours], new double[Hours], new double[Hours]);
        CourseRoll.Live(task, course, (h, house, water, air) => (lived.HouseC[h], lived.WaterW[h], lived.AirW[h]) = (house, water, air));
        return (course, lived);
    }

    private static HorizonTask Task(double heapC, Func<int, double> outsideC, double reserveKelvin, HeapFigures figures) => new()
    {
        Settings = Settings,
        Heap = figures,
        HeapC = Level(heapC),
        LeastZoneC = 46,
        ReserveKelvin = reserveKelvin,
        House = HouseModel.Of(Settings, HouseMemory.Fresh),
        HouseNow = new HouseState(6, 9, 12),
        OutsideC = (double[])[.. Enumerable.Range(0, Hours).Select(outsideC)],
        GainW = new double[Hours],
        At = new Instant(1_763_000_000_000, 5_000_000, 0),
    };

    private static double[] Level(double celsius)
    {
        double[] t = new double[HeapShape.Nodes];
        Array.Fill(t, celsius);
        return t;
    }

    private sealed record Lived(double[] HouseC, double[] WaterW, double[] AirW);
}
