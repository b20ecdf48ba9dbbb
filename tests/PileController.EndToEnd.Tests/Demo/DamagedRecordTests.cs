using System.Net.Http.Json;
using System.Text.Json;
using Microsoft.Playwright;
using PileController.EndToEnd.Tests.Panel;
using static Microsoft.Playwright.Assertions;

namespace PileController.EndToEnd.Tests.Demo;

/// <summary>A file of the record is damaged at rest, and the program is started again.</summary>
public sealed class DamagedRecordTests(BrowserBench browser) : IClassFixture<BrowserBench>, IDisposable
{
    private const int PageBytes = 8192;
    private const string Past = "from=2026-01-17&to=2026-01-30&step=86400";
    private readonly string _data = Directory.CreateTempSubdirectory("pile-damaged-").FullName;

    public void Dispose() => Directory.Delete(_data, recursive: true);

    [Fact]
    public async Task FileOfTicks_Damaged_IsSetAsideToldAndTheRestIsThere()
    {
        long last;
        await using (DemoProcess demo = await DemoProcess.StartAsync(_data))
        {
            last = (await demo.UntilAsync(now => now.GetProperty("sequence").GetInt64() > 0)).GetProperty("sequence").GetInt64();
            Assert.Equal(JsonValueKind.Null, DamageOf(await demo.NowAsync()).ValueKind);
            await demo.StopAsync();
        }

        string file = Directory.GetFiles(_data, "ticks-*.pile").Single();
        ZeroFirstPage(file);

        await using DemoProcess again = await DemoProcess.StartAsync(_data);
        JsonElement now = await again.UntilAsync(n => n.GetProperty("sequence").GetInt64() > last);
        JsonElement health = await again.Client.GetFromJsonAsync<JsonElement>("/healthz");
        JsonElement samples = await again.Client.GetFromJsonAsync<JsonElement>($"/api/samples?channel=heapCore&{Past}");

        Assert.Equal(1, DamageOf(now).GetProperty("filesSetAside").GetInt32());
        Assert.Equal(Path.GetFileName(file), DamageOf(now).GetProperty("newest").GetString());
        Assert.InRange(DateTimeOffset.UtcNow.ToUnixTimeMilliseconds() - DamageOf(now).GetProperty("sinceUtcMs").GetInt64(), 0, 600_000);
        Assert.True(now.GetProperty("record").GetProperty("accepting").GetBoolean());
        Assert.True(health.GetProperty("healthy").GetBoolean());
        Assert.Equal(1, health.GetProperty("damage").GetProperty("filesSetAside").GetInt32());
        Assert.Contains(health.GetProperty("warnings").EnumerateArray(), warning => warning.GetString()!.Contains("damaged", StringComparison.Ordinal));

        // The ticks of those days are gone; what they were summed up to is not.
        Assert.Equal(13, samples.GetProperty("series")[0].GetProperty("points").EnumerateArray().Count(HasNumbers));
        await using IBrowserContext context = await browser.ContextAsync(again.Client.BaseAddress!.ToString().TrimEnd('/'), 390);
        IPage page = await context.NewPageAsync();
        await page.GotoAsync("/#now");
        await Expect(page.GetByLabel("Cautions")).ToContainTextAsync("1 damaged file was set aside");
        await Expect(page.GetByLabel("Cautions")).ToContainTextAsync("everything else can be read");
    }

    private static JsonElement DamageOf(JsonElement now) => now.GetProperty("record").GetProperty("damage");

    private static bool HasNumbers(JsonElement point) => point[1].ValueKind == JsonValueKind.Number;

    private static void ZeroFirstPage(string file)
    {
        using FileStream stream = new(file, FileMode.Open, FileAccess.Write);
        stream.Write(new byte[PageBytes]);
    }
}
