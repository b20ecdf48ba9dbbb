using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using PileController.Control.Readings;
using PileController.Tests.Support;

namespace PileController.Tests.Panel.Commissioning;

public sealed class CommissioningApiTests : IAsyncLifetime
{
    private PanelHost _host = null!;

    // Fast: a minute of a test is a few milliseconds here.
    public async Task InitializeAsync() => _host = await PanelHost.StartAsync(speed: 3600);

    public async Task DisposeAsync() => await _host.DisposeAsync();

    [Fact]
    public async Task Look_BeforeAnything_TellsTheTestsAndWhatMoves()
    {
        JsonElement body = await _host.GetAsync("/api/commissioning");

        JsonElement bucket = body.GetProperty("tests").EnumerateArray().Single(one => one.GetProperty("id").GetString() == "bucket");
        Assert.Equal("pump (off, 100 %)", bucket.GetProperty("moving")[0].GetString());
        Assert.Equal(JsonValueKind.Null, body.GetProperty("run").ValueKind);
        Assert.Equal(15, body.GetProperty("probes").GetArrayLength());
        Assert.All(body.GetProperty("actuators").EnumerateArray(), one => Assert.Equal(JsonValueKind.Null, one.GetProperty("provenUtcMs").ValueKind));
    }

    [Fact]
    public async Task Find_ProbeThatWarms_IsFoundKeptAndPrinted()
    {
        await BeginAsync("find");
        await UntilAsync(run => run.GetProperty("step").GetInt32() == 2);
        double warmth = 0;
        _host.Rig.Reads = at => MadeUp.Readings(at).With(Channel.Tank, Reading.FromValue(Channel.Tank, 20 + Math.Min(10, warmth++)));
        JsonElement run = await UntilAsync(run => run.GetProperty("ended").GetBoolean());

        Assert.Equal(("tank", "sound"), (run.GetProperty("outcomes")[0].GetProperty("subject").GetString(), run.GetProperty("outcomes")[0].GetProperty("verdict").GetString()));
        JsonElement kept = await OkAsync(_host.Client.PostAsJsonAsync("/api/commissioning/keep", new { who = "Robin" }));
        Assert.True(kept.GetProperty("run").GetProperty("kept").GetBoolean());
        Assert.Equal("Robin", kept.GetProperty("sheet")[0].GetProperty("by").GetProperty("who").GetString());
        Assert.Contains("The probe in your hand is tank", await _host.Client.GetStringAsync("/api/commissioning/sheet"));
        using HttpResponseMessage again = await _host.Client.PostAsJsonAsync("/api/commissioning/keep", new { who = "Robin" });
        Assert.Equal(HttpStatusCode.Conflict, again.StatusCode);
    }

    [Fact]
    public async Task Exercise_KeptOnTheSheet_IsShownAsTheLastProof()
    {
        _host.Rig.Reads = at => MadeUp.Readings(at)
            .With(Channel.Flow, Reading.FromValue(Channel.Flow, 6 * _host.Rig.Told.PumpDuty * _host.Rig.Told.ValveOpening))
            .With(Channel.PumpPower, Reading.FromValue(Channel.PumpPower, 22 * _host.Rig.Told.PumpDuty))
            .With(Channel.BlowerPower, Reading.FromValue(Channel.BlowerPower, 9 * _host.Rig.Told.BlowerDuty));
        await BeginAsync("exercise");
        JsonElement run = await UntilAsync(run => run.GetProperty("ended").GetBoolean());
        Assert.All(run.GetProperty("outcomes").EnumerateArray(), one => Assert.True(one.GetProperty("verdict").GetString() == "sound", one.GetProperty("sentence").GetString()));

        JsonElement body = await OkAsync(_host.Client.PostAsJsonAsync("/api/commissioning/keep", new { who = "Robin" }));

        JsonElement pump = body.GetProperty("actuators").EnumerateArray().Single(one => one.GetProperty("actuator").GetString() == "pump");
        Assert.Equal("sound", pump.GetProperty("verdict").GetString());
        Assert.Equal(JsonValueKind.Number, pump.GetProperty("provenUtcMs").ValueKind);
    }

    [Fact]
    public async Task Begin_WhileOneRuns_IsRefusedAndEndingGivesEverythingBack()
    {
        await BeginAsync("leak");
        await UntilAsync(run => run.GetProperty("awaits").GetBoolean());
        Assert.NotEqual(0, (await _host.GetAsync("/api/now")).GetProperty("hands").GetArrayLength());
        using HttpResponseMessage second = await PostAsync("find");
        Assert.Equal(HttpStatusCode.Conflict, second.StatusCode);

        JsonElement ended = await OkAsync(_host.Client.DeleteAsync("/api/commissioning"));
        await _host.NextTickAsync();

        Assert.Contains("given up at the page", ended.GetProperty("run").GetProperty("outcomes")[0].GetProperty("sentence").GetString());
        Assert.Equal(0, (await _host.GetAsync("/api/now")).GetProperty("hands").GetArrayLength());
    }

    [Fact]
    public async Task Begin_WhileSomebodyHoldsSomething_IsRefusedWithTheirName()
    {
        await OkAsync(_host.Client.PostAsJsonAsync("/api/hand", new { actuator = "pump", value = 0.5, minutes = 1440, who = "Kim" }));
        await _host.NextTickAsync();

        using HttpResponseMessage refused = await PostAsync("leak");

        Assert.Equal(HttpStatusCode.Conflict, refused.StatusCode);
        Assert.Contains("Kim holds the pump by hand", await refused.Content.ReadAsStringAsync());
        Assert.Equal(JsonValueKind.Null, (await _host.GetAsync("/api/commissioning")).GetProperty("run").ValueKind);
    }

    [Fact]
    public async Task WindDown_NeedsTheOutputsLockedOff_AndGoesOnSo()
    {
        using HttpResponseMessage refused = await PostAsync("wind-down");
        await OkAsync(_host.Client.PostAsync("/api/servicing", null));
        await _host.NextTickAsync();
        await BeginAsync("wind-down");

        JsonElement run = await UntilAsync(run => run.GetProperty("awaits").GetBoolean());
        using HttpResponseMessage moving = await PostAsync("leak");

        Assert.Equal(HttpStatusCode.Conflict, refused.StatusCode);
        Assert.Equal("Done?", run.GetProperty("question").GetProperty("text").GetString());
        Assert.Equal(HttpStatusCode.Conflict, moving.StatusCode);
    }

    [Fact]
    public async Task Keep_ManyAtOnce_PutsOneEntryOnTheSheet()
    {
        await GiveUpAsync("leak");

        HttpResponseMessage[] answers = await Task.WhenAll(Enumerable.Range(0, 8).Select(_ => _host.Client.PostAsJsonAsync("/api/commissioning/keep", new { who = "Robin" })));

        Assert.Single(answers, answer => answer.IsSuccessStatusCode);
        Assert.Equal(1, (await _host.GetAsync("/api/commissioning")).GetProperty("sheet").GetArrayLength());
        Assert.All(answers, answer => answer.Dispose());
    }

    [Fact]
    public async Task Keep_SheetThatCannotBeWritten_CanBeKeptLater()
    {
        string sheet = Path.Combine(_host.Folder, PileController.Commissioning.Sheets.SheetFile.Name);
        await GiveUpAsync("leak");
        await File.WriteAllTextAsync(sheet, "{");

        using HttpResponseMessage failed = await _host.Client.PostAsJsonAsync("/api/commissioning/keep", new { who = "Robin" });
        File.Delete(sheet);
        JsonElement kept = await OkAsync(_host.Client.PostAsJsonAsync("/api/commissioning/keep", new { who = "Robin" }));

        Assert.Equal(HttpStatusCode.ServiceUnavailable, failed.StatusCode);
        Assert.True(kept.GetProperty("run").GetProperty("kept").GetBoolean());
    }

    [Fact]
    public async Task Answer_TappedTwice_CountsOnce()
    {
        await BeginAsync("leak");
        await UntilAsync(run => run.GetProperty("awaits").GetBoolean());

        await OkAsync(_host.Client.PostAsJsonAsync("/api/commissioning/answer", new { step = 1 }));
        using HttpResponseMessage again = await _host.Client.PostAsJsonAsync("/api/commissioning/answer", new { step = 1 });

        Assert.Equal(HttpStatusCode.Conflict, again.StatusCode);
    }

    [Fact]
    public async Task Trip_WhileATestRuns_EndsItAndNoneBeginsWhileItStands()
    {
        await BeginAsync("leak");
        await UntilAsync(run => run.GetProperty("awaits").GetBoolean());
        _host.Control.Trip = "noFlow";

        JsonElement run = await UntilAsync(run => run.GetProperty("ended").GetBoolean());
        using HttpResponseMessage refused = await PostAsync("find");

        Assert.Equal("failed", run.GetProperty("outcomes")[0].GetProperty("verdict").GetString());
        Assert.Equal(HttpStatusCode.Conflict, refused.StatusCode);
    }

    [Theory]
    [InlineData("""{"test":"tea","who":"Robin"}""", "test")]
    [InlineData("""{"test":"find"}""", "who")]
    [InlineData("""{"test":"ice","who":"Robin","probes":["tea"]}""", "probes")]
    [InlineData("""{"test":"find","who":"Robin","more":1}""", "more")]
    public async Task Begin_WithAWrongField_NamesIt(string body, string field)
    {
        using HttpResponseMessage answer = await _host.Client.PostAsync("/api/commissioning", new StringContent(body, System.Text.Encoding.UTF8, "application/json"));

        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Equal(field, (await answer.Content.ReadFromJsonAsync<JsonElement>()).GetProperty("field").GetString());
    }

    [Fact]
    public async Task Begin_WithoutBeingSignedIn_IsRefusedAndLookingIsFree()
    {
        await using PanelHost locked = await PanelHost.StartAsync(passphrase: "warm chips in january");

        using HttpResponseMessage look = await locked.Client.GetAsync("/api/commissioning");
        using HttpResponseMessage begin = await locked.Client.PostAsJsonAsync("/api/commissioning", new { test = "find", who = "Robin" });

        Assert.Equal(HttpStatusCode.OK, look.StatusCode);
        Assert.Equal(HttpStatusCode.Unauthorized, begin.StatusCode);
    }

    private Task<HttpResponseMessage> PostAsync(string test) => _host.Client.PostAsJsonAsync("/api/commissioning", new { test, who = "Robin" });

    private Task<JsonElement> BeginAsync(string test) => OkAsync(PostAsync(test));

    // A test that has ended by itself meanwhile is put away by this, and there is none to keep.
    private async Task GiveUpAsync(string test)
    {
        JsonElement run;
        do
        {
            await BeginAsync(test);
            run = (await OkAsync(_host.Client.DeleteAsync("/api/commissioning"))).GetProperty("run");
        }
        while (run.ValueKind == JsonValueKind.Null);
    }

    private static async Task<JsonElement> OkAsync(Task<HttpResponseMessage> call)
    {
        using HttpResponseMessage answer = await call;
        Assert.True(answer.IsSuccessStatusCode, await answer.Content.ReadAsStringAsync());
        return await answer.Content.ReadFromJsonAsync<JsonElement>();
    }

    private async Task<JsonElement> UntilAsync(Func<JsonElement, bool> fits)
    {
        using CancellationTokenSource patience = new(TimeSpan.FromSeconds(30));
        while (true)
        {
            JsonElement run = (await _host.GetAsync("/api/commissioning")).GetProperty("run");
            if (fits(run))
            {
                return run;
            }

            await _host.Feed.AfterAsync(_host.Feed.Latest!.Sequence, patience.Token);
        }
    }
}
