using Microsoft.Playwright;

namespace PileController.EndToEnd.Tests.Panel;

/// <summary>What the first look at the page costs on a weak link.</summary>
public sealed class FirstViewTests(BrowserBench browser) : IClassFixture<BrowserBench>
{
    private const int MostBytes = 80 * 1024;

    [Fact]
    public async Task FirstView_AllOfIt_IsLight()
    {
        // At the pace of life: how many ticks follow while a slow machine draws is no weight of the first view.
        await using PageBench bench = await browser.OpenAsync(speed: 1);
        ICDPSession wire = await bench.Page.Context.NewCDPSessionAsync(bench.Page);
        double bytes = 0;
        int answers = 0;

        // Bodies as they come over the wire, the open stream's included, and the heads of the answers.
        wire.Event("Network.dataReceived").OnEvent += (_, told) => bytes += told!.Value.GetProperty("encodedDataLength").GetDouble();
        wire.Event("Network.responseReceived").OnEvent += (_, told) =>
        {
            answers++;
            bytes += told!.Value.GetProperty("response").GetProperty("encodedDataLength").GetDouble();
        };
        await wire.SendAsync("Network.enable");

        await bench.GoAsync("now");
        await bench.Page.WaitForFunctionAsync("() => document.querySelector('[data-card=day] dd').textContent !== '–'");

        Assert.InRange(answers, 10, 60);
        Assert.InRange(bytes, 10_000, MostBytes);
    }
}
