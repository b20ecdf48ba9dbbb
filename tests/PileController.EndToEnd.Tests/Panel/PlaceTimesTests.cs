using System.Text.Json;

namespace PileController.EndToEnd.Tests.Panel;

/// <summary>The page tells moments of the past by the rule that held then, not by the offset of now.</summary>
public sealed class PlaceTimesTests(BrowserBench browser) : IClassFixture<BrowserBench>
{
    [Fact]
    public async Task Times_AcrossBothChangesOfTheClocks_FollowTheZone()
    {
        await using PageBench bench = await browser.OpenAsync(1280);
        await bench.GoAsync("more");

        JsonElement told = await bench.Page.EvaluateAsync<JsonElement>(
            """
            async () => {
              const time = await import("/js/time.js");
              const { timeTicks } = await import("/js/charts/scale.js");
              time.tellBy("America/New_York");
              const at = (text) => time.clock(Date.parse(text), -240);
              const marks = (from, to) => timeTicks(Date.parse(from), Date.parse(to), -240, 12).map((tick) => tick.text).join(" ");
              return {
                spring: [at("2026-03-08T06:59:00Z"), at("2026-03-08T07:00:00Z")].join(" "),
                autumn: [at("2026-11-01T05:59:00Z"), at("2026-11-01T06:00:00Z")].join(" "),
                moments: [Date.UTC(2026, 2, 8), Date.UTC(2026, 2, 9), Date.UTC(2026, 10, 2)].map((local) => new Date(time.momentOf(local, -240)).toISOString()).join(" "),
                springMarks: marks("2026-03-08T05:00:00Z", "2026-03-08T10:00:00Z"),
                autumnMarks: marks("2026-11-01T04:00:00Z", "2026-11-01T09:00:00Z"),
                fixed: (time.tellBy(null), at("2026-01-15T12:00:00Z")),
                unknown: (time.tellBy("Nowhere/At_All"), at("2026-01-15T12:00:00Z")),
              };
            }
            """);

        Assert.Equal("01:59 03:00", told.GetProperty("spring").GetString());
        Assert.Equal("01:59 01:00", told.GetProperty("autumn").GetString());
        Assert.Equal("2026-03-08T05:00:00.000Z 2026-03-09T04:00:00.000Z 2026-11-02T05:00:00.000Z", told.GetProperty("moments").GetString());
        Assert.Equal("8 Mar 01:00 03:00 04:00 05:00 06:00", told.GetProperty("springMarks").GetString());
        Assert.Equal("1 Nov 01:00 02:00 03:00 04:00", told.GetProperty("autumnMarks").GetString());
        Assert.Equal("08:00", told.GetProperty("fixed").GetString());
        Assert.Equal("08:00", told.GetProperty("unknown").GetString());
        Assert.Empty(bench.Troubles);
    }
}
