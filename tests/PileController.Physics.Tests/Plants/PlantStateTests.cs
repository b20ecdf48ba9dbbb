using System.Text.Json;
using PileController.Physics.Plants;
using PileController.Physics.Sky.Weather;

namespace PileController.Physics.Tests.Plants;

/// <summary>A stored plant goes on as if nothing had happened, to the last bit.</summary>
public class PlantStateTests
{
    private static readonly WeatherSeries Weather = Weathers.Of("New York");

    public static TheoryData<string> Variants => PlantVariant.All;

    [Theory]
    [MemberData(nameof(Variants))]
    public void Snapshot_ThroughJson_GoesOnWithTheSameBits(string variant)
    {
        PlantBuild build = PlantVariant.Of(variant) with { Power = new() };
        Plant first = Fresh(build);
        RandomHands hands = new(7);
        for (int stage = 0; stage < 12; stage++)
        {
            Live(first, hands, 700 + (stage * 31));
            string json = JsonSerializer.Serialize(first.Snapshot());
            Plant second = new(build, Weather, JsonSerializer.Deserialize<PlantState>(json)!);
            Assert.Equal(Seen(first), Seen(second));

            PlantInputs[] after = [.. Enumerable.Range(0, 300).Select(_ => hands.Minute())];
            foreach (PlantInputs inputs in after)
            {
                first.Step(inputs, 60);
                second.Step(inputs, 60);
                Assert.Equal(Seen(first), Seen(second));
            }

            Assert.Equal(JsonSerializer.Serialize(first.Snapshot()), JsonSerializer.Serialize(second.Snapshot()));
        }
    }

    [Fact]
    public void SameSeason_RunTwice_GivesTheSameBits()
    {
        Plant first = Fresh(PlantVariant.Of(PlantVariant.Shipped));
        Plant second = Fresh(PlantVariant.Of(PlantVariant.Shipped));
        Live(first, new RandomHands(3), 30 * 1440);
        Live(second, new RandomHands(3), 30 * 1440);
        Assert.Equal(JsonSerializer.Serialize(first.Snapshot()), JsonSerializer.Serialize(second.Snapshot()));
    }

    [Fact]
    public void Snapshot_WithinAMinute_IsRefused()
    {
        Plant plant = Fresh(PlantVariant.Of(PlantVariant.Shipped));
        plant.Step(default, 50);
        Assert.False(plant.AtSlowStep);
        Assert.Throws<InvalidOperationException>(plant.Snapshot);
        plant.Step(default, 10);
        Assert.True(plant.AtSlowStep);
    }

    [Fact]
    public void OneLongStep_AgainstTensOfSeconds_IsTheSame()
    {
        Plant ticks = Fresh(PlantVariant.Of(PlantVariant.Shipped));
        Plant minutes = Fresh(PlantVariant.Of(PlantVariant.Shipped));
        PlantInputs inputs = new(0.8, 1, 0.5, false, 0);
        for (int i = 0; i < 360; i++)
        {
            ticks.Step(inputs, 10);
        }

        minutes.Step(inputs, 3600);
        Assert.Equal(JsonSerializer.Serialize(ticks.Snapshot()), JsonSerializer.Serialize(minutes.Snapshot()));
    }

    [Theory]
    [InlineData(1)]
    [InlineData(7)]
    [InlineData(25)]
    [InlineData(60)]
    [InlineData(600)]
    public void Step_OfAnyLength_KeepsClockAndEnergy(double seconds)
    {
        Plant plant = Fresh(PlantVariant.Of(PlantVariant.Shipped));
        double heapJ = plant.Heap.StoredJ;
        double loopJ = plant.LoopStoredJ;
        double houseJ = plant.HouseStoredJ;
        long before = plant.UtcMilliseconds;
        int steps = (int)(172_800 / seconds);
        for (int i = 0; i < steps; i++)
        {
            plant.Step(new PlantInputs(0.9, 1, 0.7, false, 0), seconds);
        }

        Assert.Equal(steps * seconds * 1000, plant.UtcMilliseconds - before);
        Assert.InRange(Balance.Heap(heapJ, plant.Heap).Gap(), 0, 1e-9);
        Assert.InRange(Balance.Loop(loopJ, plant).Gap(), 0, 1e-9);
        Assert.InRange(Balance.House(houseJ, plant).Gap(), 0, 1e-9);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-10)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void Step_OfNoLength_IsRefused(double seconds)
    {
        Plant plant = Fresh(PlantVariant.Of(PlantVariant.Shipped));
        var error = Assert.Throws<ArgumentOutOfRangeException>(() => plant.Step(default, seconds));
        Assert.Contains("seconds", error.Message);
    }

    [Fact]
    public void Plant_FromAStateOfAnotherBuild_NamesWhatDoesNotFit()
    {
        PlantBuild build = PlantVariant.Of(PlantVariant.Shipped);
        PlantState state = Fresh(build).Snapshot();
        PlantState dry = state with { Heap = state.Heap with { WaterKg = [1, 2] } };
        PlantState cut = state with { Loop = state.Loop with { SupplyC = [1] } };
        Assert.Contains("2 cells of WaterKg; this build has 18", Assert.Throws<ArgumentException>(() => new Plant(build, Weather, dry)).Message);
        Assert.Contains("1 cells of SupplyC; it takes 3", Assert.Throws<ArgumentException>(() => new Plant(build, Weather, cut)).Message);
    }

    private static Plant Fresh(PlantBuild build) =>
        new(build, Weather, Plant.Fresh(build, Weather, Weathers.FirstOfNovember("New York", 2012)));

    private static void Live(Plant plant, RandomHands hands, int minutes)
    {
        for (int i = 0; i < minutes; i++)
        {
            plant.Step(hands.Minute(), 60);
        }
    }

    private static double[] Seen(Plant plant) =>
    [
        plant.FlowLitresPerMinute, plant.PumpW, plant.BlowerW, plant.DuctAirC, plant.AirDrawW, plant.SupplyC, plant.ReturnC,
        plant.TankC, plant.HouseC, plant.FloorC, plant.BatteryV, plant.Heap.ActiveZoneC, plant.Heap.TurnsShellC, plant.Heap.NearTurnsC,
        plant.Heap.WallC, plant.Heap.DrumC, plant.Heap.DuctShellC, plant.Sky.OutsideC,
    ];
}
