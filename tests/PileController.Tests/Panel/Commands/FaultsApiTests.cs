using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using PileController.Control.Readings;
using PileController.Rigs.Faults;
using PileController.Tests.Support;

namespace PileController.Tests.Panel.Commands;

public class FaultsApiTests
{
    [Fact]
    public async Task Faults_OnASimulatedRig_GoInAndComeOut()
    {
        await using PanelHost host = await PanelHost.StartAsync();

        await host.Client.PostAsJsonAsync("/api/faults", new { kind = "open", channel = "heapCore" });
        await host.Client.PostAsJsonAsync("/api/faults", new { kind = "blockedLine", size = 0.5 });
        Assert.Equal([new Fault(FaultKind.Open, Channel.HeapCore), new Fault(FaultKind.BlockedLine, null, 0.5)], host.Rig.Active);

        await host.Client.DeleteAsync("/api/faults?channel=heapCore");
        Assert.Equal([new Fault(FaultKind.BlockedLine, null, 0.5)], host.Rig.Active);

        await host.Client.DeleteAsync("/api/faults");
        Assert.Empty(host.Rig.Active);
    }

    [Theory]
    [InlineData("flood", null, null, "kind")]
    [InlineData("open", null, null, "channel")]
    [InlineData("open", "sun", null, "channel")]
    [InlineData("deadPump", "house", null, "channel")]
    [InlineData("blockedLine", null, 1.5, "size")]
    [InlineData("blockedLine", null, 0.0, "size")]
    [InlineData("short", "flow", null, "channel")]
    [InlineData("short", "level", null, "channel")]
    [InlineData("drift", "leak", 1.0, "channel")]
    [InlineData("spike", "level", null, "channel")]
    [InlineData("spike", "house", 111.0, "size")]
    [InlineData("drift", "house", 0.0, "size")]
    [InlineData("open", "house", 1.0, "size")]
    public async Task Faults_WrongField_IsNamed(string kind, string? channel, double? size, string field)
    {
        await using PanelHost host = await PanelHost.StartAsync();
        Dictionary<string, object> body = new() { ["kind"] = kind };
        if (channel is not null)
        {
            body["channel"] = channel;
        }

        if (size is not null)
        {
            body["size"] = size;
        }

        using HttpResponseMessage answer = await host.Client.PostAsJsonAsync("/api/faults", body);

        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Contains($"\"field\":\"{field}\"", await answer.Content.ReadAsStringAsync());
    }

    [Fact]
    public async Task Faults_OfferedWithEachReading_AllGoIn()
    {
        await using PanelHost host = await PanelHost.StartAsync();
        foreach (JsonElement reading in (await host.GetAsync("/api/now")).GetProperty("readings").EnumerateArray())
        {
            string channel = reading.GetProperty("channel").GetString()!;
            string[] kinds = [.. reading.GetProperty("faultKinds").EnumerateArray().Select(kind => kind.GetString()!)];

            Assert.Contains("open", kinds);
            foreach (string kind in kinds)
            {
                using HttpResponseMessage answer = await host.Client.PostAsJsonAsync("/api/faults", new { kind, channel });
                Assert.Equal((kind, channel, HttpStatusCode.Accepted), (kind, channel, answer.StatusCode));
            }
        }
    }

    [Fact]
    public async Task Faults_OnARealRig_AreNotThere()
    {
        await using PanelHost host = await PanelHost.StartAsync(simulated: false);

        using HttpResponseMessage put = await host.Client.PostAsJsonAsync("/api/faults", new { kind = "deadPump" });
        using HttpResponseMessage cleared = await host.Client.DeleteAsync("/api/faults");

        Assert.Equal(HttpStatusCode.NotFound, put.StatusCode);
        Assert.Contains("real", await put.Content.ReadAsStringAsync());
        Assert.Equal(HttpStatusCode.NotFound, cleared.StatusCode);
    }
}
