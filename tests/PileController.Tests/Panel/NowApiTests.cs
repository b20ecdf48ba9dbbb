using System.Text.Json;
using PileController.Tests.Support;

namespace PileController.Tests.Panel;

public class NowApiTests
{
    [Fact]
    public async Task Now_AfterATick_TellsTheMomentInSiWithUnitsInKeys()
    {
        await using PanelHost host = await PanelHost.StartAsync();

        JsonElement now = await host.GetAsync("/api/now");

        Assert.Equal("Alder Bank", now.GetProperty("holding").GetString());
        Assert.Equal("drawing", now.GetProperty("mode").GetString());
        Assert.Equal("means", now.GetProperty("curb").GetString());
        Assert.Equal(10, now.GetProperty("tickSeconds").GetDouble());
        Assert.StartsWith("2013-01-28T00:1", now.GetProperty("localTime").GetString());
        Assert.EndsWith("-05:00", now.GetProperty("localTime").GetString());
        Assert.Equal(310, now.GetProperty("estimate").GetProperty("reserveMJ").GetDouble(), 9);
        Assert.Equal(225, now.GetProperty("totals").GetProperty("waterKWh").GetDouble(), 9);
        Assert.Equal(5_400_000, now.GetProperty("utcMs").GetInt64() - now.GetProperty("modeSinceUtcMs").GetInt64());
        Assert.Equal(MadeUp.Interlocks.Count, now.GetProperty("interlocks").GetArrayLength());
        Assert.Equal(0, now.GetProperty("restraints").GetArrayLength());
        JsonElement core = now.GetProperty("readings")[0];
        Assert.Equal("heapCore", core.GetProperty("channel").GetString());
        Assert.Equal("Heap core", core.GetProperty("name").GetString());
        Assert.Equal("good", core.GetProperty("quality").GetString());
        Assert.Equal(0.45, core.GetProperty("radiusM").GetDouble());
    }

    [Theory]
    [InlineData("houseHot", "pump holdsOff", "valve holdsOff", "blower holdsOff", "backup holdsOff")]
    [InlineData("batteryLow", "blower holdsOff")]
    [InlineData("lineFrost", "pump moves", "valve moves")]
    public async Task Now_WhileAnInterlockActs_TellsWhatItDoesWithEachActuator(string id, params string[] does)
    {
        await using PanelHost host = await PanelHost.StartAsync();
        host.Control.Acting[id] = true;
        await host.NextTickAsync();

        JsonElement[] restraints = [.. (await host.GetAsync("/api/now")).GetProperty("restraints").EnumerateArray()];

        Assert.Equal(does, restraints.Select(one => $"{one.GetProperty("actuator")} {one.GetProperty("does")}"));
        Assert.All(restraints, one => Assert.Equal(id, one.GetProperty("interlock").GetString()));
    }

    [Fact]
    public async Task Now_InBothSystemsOfUnits_SetsThousandsApartByASpace()
    {
        await using PanelHost host = await PanelHost.StartAsync();

        JsonElement now = await host.GetAsync("/api/now");

        Assert.Matches(@"\d \d{3} W", now.GetProperty("why").GetString());
        Assert.Matches(@"\d \d{3} BTU/h", now.GetProperty("whyAmerican").GetString());
    }

    [Fact]
    public async Task Now_OfTheDemo_TellsTheHousesAirAndThePlacesOfTheGrowersOwn()
    {
        await using PanelHost host = await PanelHost.StartAsync();

        JsonElement[] readings = [.. (await host.GetAsync("/api/now")).GetProperty("readings").EnumerateArray()];

        Assert.Equal(
            [
                ("humidity", "House humidity", "%"), ("carbonDioxide", "House carbon dioxide", "ppm"), ("spareOne", "Drum", "°C"),
                ("spareTwo", "Line outside", "°C"), ("spareThree", "Bed", "°C"), ("spareFour", "Cold frame", "°C"),
            ],
            readings[^6..].Select(one => (one.GetProperty("channel").GetString(), one.GetProperty("name").GetString(), one.GetProperty("unit").GetString())));
    }

    [Fact]
    public async Task Now_ProbeBroken_HasNoValueAndSaysWhy()
    {
        await using PanelHost host = await PanelHost.StartAsync();
        host.Rig.Add(new(Rigs.Faults.FaultKind.Open, PileController.Control.Readings.Channel.HeapCore));
        await host.NextTickAsync();

        JsonElement core = (await host.GetAsync("/api/now")).GetProperty("readings")[0];

        Assert.Equal(JsonValueKind.Null, core.GetProperty("value").ValueKind);
        Assert.Equal("noAnswer", core.GetProperty("quality").GetString());
        Assert.Equal("does not answer", core.GetProperty("qualityText").GetString());
    }

    [Fact]
    public async Task Health_TicksOnTime_IsWell()
    {
        await using PanelHost host = await PanelHost.StartAsync();

        JsonElement health = await host.GetAsync("/healthz");

        Assert.True(health.GetProperty("healthy").GetBoolean());
        Assert.Equal(0, health.GetProperty("reasons").GetArrayLength());
    }
}
