using System.Net;
using System.Net.Http.Json;
using System.Text.Json;

namespace PileController.EndToEnd.Tests.Demo;

/// <summary>The main job, on the program itself: the demo lives, a person steps in, the plug is pulled.</summary>
public sealed class DemoTests : IDisposable
{
    private const int DayTicks = 8640;
    private readonly string _data = Directory.CreateTempSubdirectory("pile-demo-").FullName;

    private readonly string _beside = Directory.CreateTempSubdirectory("pile-beside-").FullName;

    public void Dispose()
    {
        Directory.Delete(_data, recursive: true);
        Directory.Delete(_beside, recursive: true);
    }

    [Fact]
    public async Task Demo_Started_HasFourteenDaysBehindItAndGoesOn()
    {
        await using DemoProcess demo = await DemoProcess.StartAsync(_data);
        JsonElement first = await demo.UntilAsync(now => now.GetProperty("sequence").GetInt64() > 0);

        JsonElement later = await demo.UntilAsync(now => now.GetProperty("sequence").GetInt64() > first.GetProperty("sequence").GetInt64());

        Assert.True(later.GetProperty("utcMs").GetInt64() > first.GetProperty("utcMs").GetInt64());
        Assert.True(later.GetProperty("record").GetProperty("lastSequence").GetInt64() > 14 * DayTicks);
        JsonElement samples = await demo.Client.GetFromJsonAsync<JsonElement>(
            "/api/samples?channel=heapCore&from=2026-01-17&to=2026-01-31&step=86400");
        Assert.Equal(14, samples.GetProperty("series")[0].GetProperty("points").GetArrayLength());
    }

    [Fact]
    public async Task Probe_Broken_IsMarkedAndTheEstimateGoesOn()
    {
        await using DemoProcess demo = await DemoProcess.StartAsync(_data);
        await demo.PostAsync("/api/faults", new { kind = "open", channel = "heapCore" });

        JsonElement now = await demo.UntilAsync(n => Quality(n, "heapCore") == "noAnswer");

        Assert.Contains("core", now.GetProperty("why").GetString(), StringComparison.OrdinalIgnoreCase);
        Assert.True(now.GetProperty("estimate").GetProperty("trusted").GetBoolean());
        Assert.InRange(now.GetProperty("estimate").GetProperty("activeZoneC").GetDouble(), 40, 75);
        await demo.Client.DeleteAsync("/api/faults?kind=open&channel=heapCore");
        await demo.UntilAsync(n => Quality(n, "heapCore") == "good");
    }

    [Fact]
    public async Task Pump_TakenByHandForTenMinutes_EndsByItself()
    {
        await using DemoProcess demo = await DemoProcess.StartAsync(_data, speed: 300);

        HttpResponseMessage taken = await demo.PostAsync("/api/hand", new { actuator = "pump", value = 0.8, minutes = 10, who = "Robin" });

        Assert.Equal(HttpStatusCode.Accepted, taken.StatusCode);
        JsonElement held = await demo.UntilAsync(n => n.GetProperty("hands").GetArrayLength() == 1);
        Assert.Equal(0.8, held.GetProperty("outputs").GetProperty("pumpDuty").GetDouble(), 3);
        Assert.Equal("byHand", held.GetProperty("mode").GetString());
        JsonElement after = await demo.UntilAsync(n => n.GetProperty("hands").GetArrayLength() == 0);
        Assert.NotEqual("byHand", after.GetProperty("mode").GetString());

        // Begin and end as recorded: what a poll happens to see first tells less.
        long began = await ToldAtAsync(demo, "Robin took the pump by hand");
        long ended = await ToldAtAsync(demo, "By hand ended by itself");
        // The end is kept on the monotonic clock; told on the wall's it may differ by a rounded millisecond or two.
        long due = held.GetProperty("hands")[0].GetProperty("endsUtcMs").GetInt64();
        Assert.InRange(due - began, 599_990, 600_010);
        // The first tick that finds the ten minutes over is the one that ends it, however late a busy machine comes to it.
        long[] ticks = await TicksAsync(demo, due - 3, ended + 1);
        Assert.Equal(ended, ticks[0]);
    }

    [Fact]
    public async Task Trip_Standing_CannotBeOverriddenByHand()
    {
        await using DemoProcess demo = await DemoProcess.StartAsync(_data, speed: 300);
        await demo.PostAsync("/api/faults", new { kind = "deadPump" });
        await demo.PostAsync("/api/hand", new { actuator = "pump", value = 1, minutes = 60, who = "Robin" });

        JsonElement tripped = await demo.UntilAsync(n => n.GetProperty("mode").GetString() == "tripped");

        Assert.NotEqual(0, tripped.GetProperty("trips").GetArrayLength());
        Assert.Equal(0, tripped.GetProperty("outputs").GetProperty("pumpDuty").GetDouble());
        HttpResponseMessage again = await demo.PostAsync("/api/hand", new { actuator = "pump", value = 1, minutes = 5, who = "Robin" });
        Assert.Equal(HttpStatusCode.Conflict, again.StatusCode);
        await demo.Client.DeleteAsync("/api/faults?kind=deadPump");
        // A trip whose cause still stands at the next tick is refused, and a second one may have latched since: a person
        // clears what the page shows until nothing stands.
        JsonElement now = await demo.NowAsync();
        for (int tries = 0; tries < 20 && now.GetProperty("mode").GetString() == "tripped"; tries++)
        {
            foreach (JsonElement trip in now.GetProperty("trips").EnumerateArray())
            {
                await demo.PostAsync($"/api/trips/{trip.GetString()}/clear", new { });
            }

            long cleared = now.GetProperty("sequence").GetInt64();
            now = await demo.UntilAsync(n => n.GetProperty("sequence").GetInt64() > cleared + 1);
        }

        Assert.NotEqual("tripped", now.GetProperty("mode").GetString());
    }

    [Fact]
    public async Task Record_AfterAStop_VerifiesAndReplaysToTheBit()
    {
        await using (DemoProcess demo = await DemoProcess.StartAsync(_data))
        {
            JsonElement first = await demo.NowAsync();
            await demo.PostAsync("/api/faults", new { kind = "spike", channel = "house", size = 20 });
            await demo.UntilAsync(n => n.GetProperty("sequence").GetInt64() >= first.GetProperty("sequence").GetInt64() + 20);
            await demo.StopAsync();
        }

        (int verified, string told) = await DemoProcess.RunAsync("record", "verify", "--data", _data);
        (int replayed, string report) = await DemoProcess.RunAsync("record", "replay", "--data", _data, "--json");
        (_, string decisions) = await DemoProcess.RunAsync("record", "decisions", "--data", _data, "--json");
        (_, string samples) = await DemoProcess.RunAsync(
            "record", "samples", "--data", _data, "--channel", "house", "--to", "2026-01-31", "--step", "1 h", "--json");
        (_, string table) = await DemoProcess.RunAsync(
            "record", "samples", "--data", _data, "--channel", "house", "--to", "2026-01-31", "--step", "1 h", "--csv");

        Assert.True(verified == 0, told);
        Assert.True(replayed == 0, report);
        using JsonDocument told14Days = JsonDocument.Parse(decisions);
        Assert.NotEqual(0, told14Days.RootElement.GetArrayLength());
        using JsonDocument hours = JsonDocument.Parse(samples);
        Assert.Equal(14 * 24, hours.RootElement.GetArrayLength());
        Assert.Equal(1 + (14 * 24), table.Split('\n', StringSplitOptions.RemoveEmptyEntries).Length);
        using JsonDocument answer = JsonDocument.Parse(report);
        Assert.True(answer.RootElement.GetProperty("ticks").GetInt64() > 14 * DayTicks);
        Assert.Equal(
            answer.RootElement.GetProperty("ticks").GetInt64(), answer.RootElement.GetProperty("identical").GetInt64());
    }

    [Fact]
    public async Task Record_WhileItServes_IsReadBackedUpAndTriedWithOtherSettings()
    {
        string backup = Path.Combine(_beside, "backup");
        string back = Path.Combine(_beside, "back");
        string settings = Path.Combine(_beside, "pile.json");
        (_, string defaults) = await DemoProcess.RunAsync("check", "--defaults");
        await File.WriteAllTextAsync(settings, defaults.Replace("\"minimum\": \"5 °C\"", "\"minimum\": \"7 °C\"", StringComparison.Ordinal));
        await using (DemoProcess demo = await DemoProcess.StartAsync(_data))
        {
            JsonElement before = await demo.NowAsync();
            long safe = before.GetProperty("record").GetProperty("lastSequence").GetInt64();

            (int verified, string found) = await DemoProcess.RunAsync("record", "verify", "--data", _data);
            (int made, string told) = await DemoProcess.RunAsync("record", "backup", backup, "--data", _data, "--json");
            (int tried, string tale) = await DemoProcess.RunAsync("record", "replay", "--data", _data, "--with", settings, "--json");
            (int refused, string why) = await DemoProcess.RunAsync("record", "restore", backup, "--data", _data, "--set-aside");

            Assert.True(verified == 0, found);
            Assert.True(made == 0, told);
            using JsonDocument copy = JsonDocument.Parse(told);
            Assert.True(copy.RootElement.GetProperty("check").GetProperty("lastSequence").GetInt64() >= safe);
            Assert.True(tried == 0, tale);
            using JsonDocument comparison = JsonDocument.Parse(tale);
            Assert.True(comparison.RootElement.GetProperty("differing").GetInt64() > 0);
            Assert.Equal(
                comparison.RootElement.GetProperty("ticks").GetInt64(), comparison.RootElement.GetProperty("asRecorded").GetInt64());
            Assert.Equal(2, refused);
            Assert.Contains("in use", why, StringComparison.Ordinal);
            JsonElement after = await demo.UntilAsync(n => n.GetProperty("sequence").GetInt64() > before.GetProperty("sequence").GetInt64() + 5);
            Assert.Equal(JsonValueKind.Null, after.GetProperty("record").GetProperty("fault").ValueKind);
            await demo.StopAsync();
        }

        (int restored, string restore) = await DemoProcess.RunAsync("record", "restore", backup, "--data", back);
        (int replayed, string replay) = await DemoProcess.RunAsync("record", "replay", "--data", back);

        Assert.True(restored == 0, restore);
        Assert.True(replayed == 0, replay);
    }

    [Fact]
    public async Task Plug_PulledAndBack_GoesOnWithNothingRunningAndNothingHeld()
    {
        long last;
        await using (DemoProcess demo = await DemoProcess.StartAsync(_data))
        {
            await demo.PostAsync("/api/hand", new { actuator = "blower", value = 1, minutes = 600, who = "Robin" });
            JsonElement held = await demo.UntilAsync(n => n.GetProperty("hands").GetArrayLength() == 1);
            last = held.GetProperty("record").GetProperty("lastSequence").GetInt64();
            await demo.KillAsync();
        }

        // Slow enough to be looked at before it draws again.
        await using (DemoProcess demo = await DemoProcess.OpenAsync("--data", _data, "--urls", "http://127.0.0.1:0", "--speed", "1"))
        {
            JsonElement back = await demo.UntilAsync(n => n.GetProperty("sequence").GetInt64() > last);
            Assert.Equal(0, back.GetProperty("hands").GetArrayLength());
            Assert.NotEqual("drawing", back.GetProperty("mode").GetString());
            await demo.StopAsync();
        }

        (int verified, string told) = await DemoProcess.RunAsync("record", "verify", "--data", _data);
        (int replayed, string report) = await DemoProcess.RunAsync("record", "replay", "--data", _data);
        Assert.True(verified == 0, told);
        Assert.True(replayed == 0, report);
    }

    [Fact]
    public async Task Request_WithAForeignHostOrOrigin_IsRefused()
    {
        await using DemoProcess demo = await DemoProcess.StartAsync(_data);
        using HttpRequestMessage rebound = new(HttpMethod.Get, "/api/now");
        rebound.Headers.Host = "alder-bank.example";
        using HttpRequestMessage foreign = new(HttpMethod.Delete, "/api/hand");
        foreign.Headers.Add("Origin", "http://alder-bank.example");

        Assert.Equal(HttpStatusCode.Forbidden, (await demo.Client.SendAsync(rebound)).StatusCode);
        Assert.Equal(HttpStatusCode.Forbidden, (await demo.Client.SendAsync(foreign)).StatusCode);
    }

    [Fact]
    public async Task Serve_AtAPortInUse_SaysSoInOneSentence()
    {
        await using DemoProcess demo = await DemoProcess.StartAsync(_data);

        (int exit, string output) = await DemoProcess.RunAsync("serve", "--urls", demo.Client.BaseAddress!.GetLeftPart(UriPartial.Authority));

        Assert.Equal(2, exit);
        Assert.StartsWith("Cannot serve at http://127.0.0.1:", output);
        Assert.Single(output.Split('\n', StringSplitOptions.RemoveEmptyEntries));
    }

    [Theory]
    [InlineData("http://0.0.0.0:8080")]
    [InlineData("http://192.168.0.7:8080")]
    [InlineData("http://alder-bank.example")]
    public async Task Serve_AnywhereButOnLoopback_IsRefusedWithTheReason(string urls)
    {
        (int exit, string told) = await DemoProcess.RunAsync("serve", "--urls", urls, "--data", _data);

        Assert.Equal(2, exit);
        Assert.Contains("Allowed: an http address of this machine only, such as http://127.0.0.1:8080, or ", told, StringComparison.Ordinal);
    }

    private static async Task<long[]> TicksAsync(DemoProcess demo, long from, long to)
    {
        string answer = await demo.Client.GetStringAsync($"/api/samples?channel=house&step=0&from={from}&to={to}");
        using JsonDocument samples = JsonDocument.Parse(answer);
        return [.. samples.RootElement.GetProperty("series")[0].GetProperty("points").EnumerateArray().Select(point => point[0].GetInt64())];
    }

    private static async Task<long> ToldAtAsync(DemoProcess demo, string words)
    {
        // The record is written by a thread of its own, a little after the tick.
        long? at = null;
        await demo.UntilAsync(_ => (at = Told(demo, words)) is not null);
        return at!.Value;
    }

    private static long? Told(DemoProcess demo, string words)
    {
        using HttpRequestMessage ask = new(HttpMethod.Get, "/api/decisions?kind=hand&limit=20");
        using HttpResponseMessage answer = demo.Client.Send(ask);
        using Stream body = answer.EnsureSuccessStatusCode().Content.ReadAsStream();
        using JsonDocument decisions = JsonDocument.Parse(body);
        foreach (JsonElement decision in decisions.RootElement.GetProperty("decisions").EnumerateArray())
        {
            if (decision.GetProperty("note").GetString() is { } note && note.Contains(words, StringComparison.Ordinal))
            {
                return decision.GetProperty("utcMs").GetInt64();
            }
        }

        return null;
    }

    private static string? Quality(JsonElement now, string channel) => now.GetProperty("readings").EnumerateArray()
        .Single(r => r.GetProperty("channel").GetString() == channel).GetProperty("quality").GetString();
}
