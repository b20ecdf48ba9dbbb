using System.Net;
using System.Net.Http.Json;
using System.Text;
using System.Text.Json;
using PileController.Ledgers;
using PileController.Tests.Ledgers;
using PileController.Tests.Support;

namespace PileController.Tests.Panel.Ledgers;

public class LedgerApiTests
{
    private static readonly object Opening = new { act = "open", name = "Winter 2012", heapBuilt = "2013-01-20", who = "Robin" };

    [Fact]
    public async Task Book_OfALivingHolding_IsKeptSoonAfterMidnightAndTold()
    {
        await using PanelHost host = await HostAsync();
        JsonElement page = await host.GetAsync("/api/ledger");

        Assert.Equal(JsonValueKind.Null, page.GetProperty("season").ValueKind);
        Assert.Equal(["2013-01-26", "2013-01-27", "2013-01-28"], page.GetProperty("days").EnumerateArray().Select(d => d.GetProperty("span").GetString()));
        Assert.Equal("2013-01-28", page.GetProperty("running").GetString());
        double days = page.GetProperty("days").EnumerateArray().Sum(d => d.GetProperty("waterKWh").GetDouble());
        Assert.Equal(page.GetProperty("total").GetProperty("waterKWh").GetDouble(), days, 9);
    }

    [Fact]
    public async Task Watch_WhenAQuarterHourHasBegun_WritesTheDaysThatAreOver()
    {
        await using PanelHost host = await HostAsync(speed: 600);
        string book = Path.Combine(host.Folder, BookFile.Name);

        // At this speed a quarter of an hour goes by within two seconds.
        while (!File.Exists(book))
        {
            await host.NextTickAsync();
        }

        Assert.Equal([26, 27], new BookFile(host.Folder).Read().Days.Select(d => d.Date.Day));
    }

    [Fact]
    public async Task Season_OpenedWrittenIntoAndClosed_TellsWhoAndFromWhere()
    {
        await using PanelHost host = await HostAsync();
        await PostAsync(host, "season", Opening);
        await PostAsync(host, "notes", new { text = "Turned the edge.", who = "Ann" });
        await PostAsync(host, "parts", new { name = "pump", priceEach = 110, origin = "bought", who = "Ann" });
        await PostAsync(host, "mass", new { way = "in", kilograms = 9000, known = "guessed", how = "12 trailers", who = "Ann" });
        await PostAsync(host, "season", new { act = "change", fuel = "cordwood", electricityPerKWh = 0, who = "Ann" });
        JsonElement page = await PostAsync(host, "season", new { act = "close", who = "Robin" });

        JsonElement season = page.GetProperty("season");
        Assert.Equal("Turned the edge.", season.GetProperty("notes")[0].GetProperty("text").GetString());
        Assert.Equal(110, season.GetProperty("parts")[0].GetProperty("priceEach").GetDouble());
        Assert.Equal("guessed", season.GetProperty("masses")[0].GetProperty("known").GetString());
        Assert.Equal("cordwood", page.GetProperty("money").GetProperty("fuel").GetString());
        Assert.Equal("2013-01-28", season.GetProperty("closed").GetProperty("on").GetString());
        JsonElement by = season.GetProperty("notes")[0].GetProperty("by");
        Assert.Equal("Ann", by.GetProperty("who").GetString());
        Assert.Equal("page, 127.0.0.1", by.GetProperty("from").GetString());
        Assert.InRange(by.GetProperty("atUtcMilliseconds").GetInt64(), PanelHost.Begins.ToUnixTimeMilliseconds(), PanelHost.Begins.AddDays(1).ToUnixTimeMilliseconds());
        Assert.Equal("Robin", season.GetProperty("opened").GetProperty("who").GetString());
        Assert.Equal("Winter 2012", new BookFile(host.Folder).Read().Seasons.Single().Name);
    }

    [Theory]
    [InlineData("notes", """{"who":"x"}""", "text")]
    [InlineData("notes", """{"text":"t"}""", "who")]
    [InlineData("notes", """{"text":"t","who":"x","when":1}""", "when")]
    [InlineData("parts", """{"name":"p","priceEach":-1,"origin":"bought","who":"x"}""", "priceEach")]
    [InlineData("parts", """{"name":"p","priceEach":1,"origin":"found","who":"x"}""", "origin")]
    [InlineData("parts", """{"name":"p","priceEach":1,"count":"2","origin":"bought","who":"x"}""", "count")]
    [InlineData("mass", """{"way":"up","kilograms":9,"known":"guessed","who":"x"}""", "way")]
    [InlineData("mass", """{"way":"in","kilograms":0,"known":"guessed","who":"x"}""", "kilograms")]
    [InlineData("mass", """{"way":"in","kilograms":9,"who":"x"}""", "known")]
    [InlineData("season", """{"act":"burn","who":"x"}""", "act")]
    [InlineData("season", """{"act":"open","who":"x"}""", "name")]
    [InlineData("season", """{"act":"open","name":"n","heapBuilt":"20 Jan","who":"x"}""", "heapBuilt")]
    [InlineData("season", """{"act":"open","name":"n","fuel":"peat","who":"x"}""", "fuel")]
    [InlineData("season", """{"act":"open","name":"n","pricePerUnit":-1,"who":"x"}""", "pricePerUnit")]
    public async Task Change_WithAWrongField_IsNamedWithGivenAndAllowedAndChangesNothing(string path, string json, string field)
    {
        await using PanelHost host = await HostAsync();
        using StringContent content = new(json, Encoding.UTF8, "application/json");

        using HttpResponseMessage answer = await host.Client.PostAsync($"/api/ledger/{path}", content);
        JsonElement told = await answer.Content.ReadFromJsonAsync<JsonElement>();

        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Equal(field, told.GetProperty("field").GetString());
        Assert.NotEmpty(told.GetProperty("given").GetString()!);
        Assert.NotEmpty(told.GetProperty("allowed").GetString()!);
        Assert.Empty(new BookFile(host.Folder).Read().Seasons);
    }

    [Theory]
    [InlineData("notes", """{"text":"t","who":"x"}""", "open one first")]
    [InlineData("season", """{"act":"close","who":"x"}""", "No season is open")]
    [InlineData("season", """{"act":"open","name":"n","heapBuilt":"2030-01-01","who":"x"}""", "not after 2013-01-28")]
    [InlineData("season", """{"act":"open","name":"n","fuel":"natural gas","who":"x"}""", "pricePerUnit")]
    public async Task Change_ThatDoesNotFitTheBook_IsRefusedInASentence(string path, string json, string says)
    {
        await using PanelHost host = await HostAsync();
        using StringContent content = new(json, Encoding.UTF8, "application/json");

        using HttpResponseMessage answer = await host.Client.PostAsync($"/api/ledger/{path}", content);

        Assert.Equal(HttpStatusCode.Conflict, answer.StatusCode);
        Assert.Contains(says, await answer.Content.ReadAsStringAsync(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Change_FromAnotherSite_IsTurnedAway()
    {
        await using PanelHost host = await HostAsync();
        using HttpRequestMessage foreign = new(HttpMethod.Post, "/api/ledger/season") { Content = JsonContent.Create(Opening) };
        foreign.Headers.Add("Origin", "http://elsewhere.example");

        using HttpResponseMessage answer = await host.Client.SendAsync(foreign);

        Assert.Equal(HttpStatusCode.Forbidden, answer.StatusCode);
        Assert.Empty(new BookFile(host.Folder).Read().Seasons);
    }

    [Fact]
    public async Task Book_ThatCannotBeRead_IsToldAndLeft()
    {
        // Without days that are over: the watch would write them into the book at a moment of its own.
        await using PanelHost host = await PanelHost.StartAsync();
        string book = Path.Combine(host.Folder, BookFile.Name);
        await File.WriteAllTextAsync(book, "{");

        using HttpResponseMessage looked = await host.Client.GetAsync("/api/ledger");
        using HttpResponseMessage changed = await host.Client.PostAsJsonAsync("/api/ledger/season", Opening);

        Assert.Equal((HttpStatusCode.ServiceUnavailable, HttpStatusCode.ServiceUnavailable), (looked.StatusCode, changed.StatusCode));
        Assert.Contains("cannot be read and is left as it is", await changed.Content.ReadAsStringAsync(), StringComparison.Ordinal);
        Assert.Equal("{", await File.ReadAllTextAsync(book));
    }

    [Theory]
    [InlineData("", "kWh")]
    [InlineData("?units=american", "BTU")]
    [InlineData("?season=winter%202012", "Winter 2012")]
    public async Task Report_OfASeason_IsOnePageWithoutStyleOrScriptInIt(string query, string holds)
    {
        await using PanelHost host = await HostAsync();
        await PostAsync(host, "season", Opening);

        using HttpResponseMessage answer = await host.Client.GetAsync($"/api/ledger/report{query}");
        string html = await answer.Content.ReadAsStringAsync();

        Assert.Equal("text/html; charset=utf-8", answer.Content.Headers.ContentType?.ToString());
        Assert.Contains("default-src 'none'", answer.Headers.GetValues("Content-Security-Policy").Single());
        Assert.Contains(holds, html);
        Assert.DoesNotContain("<style", html);
        Assert.DoesNotContain(" style=", html);
        Assert.DoesNotContain("<script", html);
    }

    [Theory]
    [InlineData("?units=cubits", HttpStatusCode.BadRequest)]
    [InlineData("?season=none", HttpStatusCode.Conflict)]
    public async Task Report_AskedWrongly_SaysSo(string query, HttpStatusCode status)
    {
        await using PanelHost host = await HostAsync();
        await PostAsync(host, "season", Opening);

        using HttpResponseMessage answer = await host.Client.GetAsync($"/api/ledger/report{query}");

        Assert.Equal(status, answer.StatusCode);
    }

    private static async Task<PanelHost> HostAsync(double speed = 60)
    {
        PanelHost host = await PanelHost.StartAsync(speed: speed);

        // Alder Bank lies on UTC; these blocks end soon after the host begins.
        host.Record.Accounts = new Blocks().Hours(PanelHost.Begins.AddHours(-52), 52).All;
        return host;
    }

    private static async Task<JsonElement> PostAsync(PanelHost host, string path, object body)
    {
        using HttpResponseMessage answer = await host.Client.PostAsJsonAsync($"/api/ledger/{path}", body);
        string text = await answer.Content.ReadAsStringAsync();
        Assert.True(answer.StatusCode == HttpStatusCode.OK, text);
        return JsonDocument.Parse(text).RootElement;
    }
}
