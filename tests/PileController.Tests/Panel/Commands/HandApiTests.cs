using System.Net;
using System.Net.Http.Json;
using System.Text;
using System.Text.Json;
using PileController.Control.Decisions;
using PileController.Service;
using PileController.Tests.Support;

namespace PileController.Tests.Panel.Commands;

public class HandApiTests
{
    private static readonly object Sound = new { actuator = "pump", value = 0.6, minutes = 10, who = "Robin" };

    [Fact]
    public async Task Take_Accepted_TakesEffectAtThePromisedTickAndEndsByItself()
    {
        await using PanelHost host = await PanelHost.StartAsync(speed: 600);

        using HttpResponseMessage answer = await host.Client.PostAsJsonAsync("/api/hand", Sound);
        long promised = (await answer.Content.ReadFromJsonAsync<JsonElement>()).GetProperty("effectiveSequence").GetInt64();
        await host.Feed.AfterAsync(promised + 60, CancellationToken.None);

        Assert.Equal(HttpStatusCode.Accepted, answer.StatusCode);
        Decision[] ticks = [.. host.Record.Ticks.Select(tick => tick.Decision)];
        Decision taken = ticks.Single(tick => tick.Sequence == promised);
        Assert.Empty(ticks.Last(tick => tick.Sequence < promised).Hands);
        HandHold hand = Assert.Single(taken.Hands);
        Assert.Equal(new HandHold(Actuator.Pump, 0.6, taken.At.MonotonicMilliseconds + 600_000, "Robin"), hand);
        Assert.Empty(ticks.First(tick => tick.At.MonotonicMilliseconds >= hand.UntilMonotonicMilliseconds).Hands);
    }

    [Fact]
    public async Task Release_OneActuator_GivesItBack()
    {
        await using PanelHost host = await PanelHost.StartAsync();
        await host.Client.PostAsJsonAsync("/api/hand", Sound);
        await host.NextTickAsync();

        using HttpResponseMessage answer = await host.Client.DeleteAsync("/api/hand?actuator=pump");
        TickNews news = await host.NextTickAsync();

        Assert.Equal(HttpStatusCode.Accepted, answer.StatusCode);
        Assert.Empty(news.Decision.Hands);
    }

    [Theory]
    [InlineData("{\"actuator\":\"oven\",\"value\":1,\"minutes\":10,\"who\":\"x\"}", "actuator")]
    [InlineData("{\"value\":1,\"minutes\":10,\"who\":\"x\"}", "actuator")]
    [InlineData("{\"actuator\":\"pump\",\"value\":1.01,\"minutes\":10,\"who\":\"x\"}", "value")]
    [InlineData("{\"actuator\":\"pump\",\"value\":\"1\",\"minutes\":10,\"who\":\"x\"}", "value")]
    [InlineData("{\"actuator\":\"pump\",\"value\":1,\"minutes\":0,\"who\":\"x\"}", "minutes")]
    [InlineData("{\"actuator\":\"pump\",\"value\":1,\"minutes\":1441,\"who\":\"x\"}", "minutes")]
    [InlineData("{\"actuator\":\"pump\",\"value\":1,\"minutes\":10}", "who")]
    [InlineData("{\"actuator\":\"pump\",\"value\":1,\"minutes\":10,\"who\":\"  \"}", "who")]
    [InlineData("{\"actuator\":\"pump\",\"value\":1,\"minutes\":10,\"who\":\"x\",\"speed\":2}", "speed")]
    [InlineData("[1]", "body")]
    [InlineData("{\"actuator\":", "body")]
    public async Task Take_WrongField_IsNamedWithGivenAndAllowed(string json, string field)
    {
        await using PanelHost host = await PanelHost.StartAsync();
        using StringContent body = new(json, Encoding.UTF8, "application/json");

        using HttpResponseMessage answer = await host.Client.PostAsync("/api/hand", body);
        JsonElement problem = JsonDocument.Parse(await answer.Content.ReadAsStringAsync()).RootElement;

        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Equal(field, problem.GetProperty("field").GetString());
        Assert.NotEmpty(problem.GetProperty("allowed").GetString()!);
    }

    [Fact]
    public async Task Take_WhileTripped_IsRefusedWithTheTripsName()
    {
        await using PanelHost host = await PanelHost.StartAsync();
        host.Control.Trip = "noFlow";
        await host.NextTickAsync();

        using HttpResponseMessage answer = await host.Client.PostAsJsonAsync("/api/hand", Sound);

        Assert.Equal(HttpStatusCode.Conflict, answer.StatusCode);
        Assert.Contains("noFlow", await answer.Content.ReadAsStringAsync());
    }

    [Fact]
    public async Task Take_WhileServicing_IsRefusedUntilItEnds()
    {
        await using PanelHost host = await PanelHost.StartAsync();
        await host.Client.PostAsync("/api/servicing", null);
        await host.NextTickAsync();

        using HttpResponseMessage refused = await host.Client.PostAsJsonAsync("/api/hand", Sound);
        await host.Client.DeleteAsync("/api/servicing");
        await host.NextTickAsync();
        using HttpResponseMessage taken = await host.Client.PostAsJsonAsync("/api/hand", Sound);

        Assert.Equal(HttpStatusCode.Conflict, refused.StatusCode);
        Assert.Equal(HttpStatusCode.Accepted, taken.StatusCode);
    }

    [Fact]
    public async Task Take_ActuatorThatIsNotFitted_IsRefused()
    {
        await using PanelHost host = await PanelHost.StartAsync();

        using HttpResponseMessage answer = await host.Client.PostAsJsonAsync("/api/hand", new { actuator = "backup", value = 1, minutes = 10, who = "Robin" });

        Assert.Equal(HttpStatusCode.Conflict, answer.StatusCode);
    }
}
