using System.Net;
using System.Text.Json;
using PileController.Tests.Support;

namespace PileController.Tests.Panel.Commands;

public class TripsApiTests
{
    [Fact]
    public async Task Clear_LatchedTrip_ReachesControl()
    {
        await using PanelHost host = await PanelHost.StartAsync();
        host.Control.Trip = "noFlow";
        await host.NextTickAsync();
        JsonElement tripped = await host.GetAsync("/api/now");

        using HttpResponseMessage answer = await host.Client.PostAsync("/api/trips/noFlow/clear", null);
        await host.NextTickAsync();
        JsonElement cleared = await host.GetAsync("/api/now");

        Assert.Equal("noFlow", Assert.Single(tripped.GetProperty("trips").EnumerateArray()).GetString());
        Assert.Equal(HttpStatusCode.Accepted, answer.StatusCode);
        Assert.Empty(cleared.GetProperty("trips").EnumerateArray());
    }

    [Theory]
    [InlineData("noFlow", HttpStatusCode.Conflict)]
    [InlineData("noSuchThing", HttpStatusCode.NotFound)]
    public async Task Clear_NothingLatched_IsToldSo(string id, HttpStatusCode status)
    {
        await using PanelHost host = await PanelHost.StartAsync();

        using HttpResponseMessage answer = await host.Client.PostAsync($"/api/trips/{id}/clear", null);

        Assert.Equal(status, answer.StatusCode);
    }
}
