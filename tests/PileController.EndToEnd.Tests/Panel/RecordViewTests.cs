using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace PileController.EndToEnd.Tests.Panel;

/// <summary>The record's charts by hand, by wheel and by keyboard.</summary>
public sealed class RecordViewTests(BrowserBench browser) : IClassFixture<BrowserBench>
{
    [Fact]
    public async Task Chart_CursorByKeyboard_ReadsOneMoment()
    {
        await using PageBench bench = await browser.OpenAsync(1280);
        await bench.GoAsync("record");
        ILocator cursor = Slider(bench);
        await cursor.FocusAsync();
        await bench.Page.Keyboard.PressAsync("Home");
        await Expect(cursor).ToHaveAttributeAsync("aria-valuenow", "0");
        string first = (await cursor.GetAttributeAsync("aria-valuetext"))!;

        await bench.Page.Keyboard.PressAsync("ArrowRight");

        await Expect(cursor).ToHaveAttributeAsync("aria-valuenow", "1");
        Assert.NotEqual(first, await cursor.GetAttributeAsync("aria-valuetext"));
        Assert.Contains("Active zone", first);
    }

    [Fact]
    public async Task Chart_Table_HoldsTheSamePointsAsTheChart()
    {
        await using PageBench bench = await browser.OpenAsync(1280);
        await bench.GoAsync("record");
        await bench.Page.Locator(".chart summary").First.ClickAsync();

        // The newest tick may bring a point more between the two looks, so they are compared at one moment.
        await bench.Page.WaitForFunctionAsync(
            """
            () => {
              const chart = document.querySelector('.chart');
              const rows = chart.querySelectorAll('tbody tr').length;
              return rows > 10 && rows === Number(chart.querySelector('[role=slider]').getAttribute('aria-valuemax')) + 1;
            }
            """);
    }

    [Fact]
    public async Task Keys_MoveAndZoom_TheStretchThatIsSeen()
    {
        await using PageBench bench = await browser.OpenAsync(1280);
        await bench.GoAsync("record");
        (double from, double to) = await SeenAsync(bench);
        await Slider(bench).FocusAsync();

        await bench.Page.Keyboard.PressAsync("Shift+ArrowLeft");
        (double earlierFrom, double earlierTo) = await SeenAsync(bench, otherThan: from);
        await bench.Page.Keyboard.PressAsync("+");
        (double closeFrom, double closeTo) = await SeenAsync(bench, otherThan: earlierFrom);

        Assert.Equal((to - from) / 4, from - earlierFrom, (to - from) / 100);
        Assert.Equal(to - from, earlierTo - earlierFrom, 1000.0);
        Assert.Equal((earlierTo - earlierFrom) / 2, closeTo - closeFrom, 1000.0);
        Assert.Empty(bench.Troubles);
    }

    [Fact]
    public async Task Mouse_DragAndWheel_MoveAndZoomAboutThePlaceUnderIt()
    {
        await using PageBench bench = await browser.OpenAsync(1280);
        await bench.GoAsync("record");
        (double from, double to) = await SeenAsync(bench);
        LocatorBoundingBoxResult box = (await Slider(bench).BoundingBoxAsync())!;
        float middle = box.X + (box.Width / 2);
        float high = box.Y + (box.Height / 2);

        await bench.Page.Mouse.MoveAsync(middle, high);
        await bench.Page.Mouse.DownAsync();
        await bench.Page.Mouse.MoveAsync(middle + 60, high);
        await bench.Page.Mouse.MoveAsync(middle + 120, high);
        await bench.Page.Mouse.UpAsync();
        (double draggedFrom, double draggedTo) = await SeenAsync(bench, otherThan: from);
        Assert.True(draggedFrom < from);
        Assert.Equal(to - from, draggedTo - draggedFrom, 1000.0);

        await bench.Page.Keyboard.DownAsync("Control");
        await bench.Page.Mouse.WheelAsync(0, -200);
        await bench.Page.Keyboard.UpAsync("Control");
        (double closeFrom, double closeTo) = await SeenAsync(bench, otherThan: draggedFrom);
        Assert.True(closeTo - closeFrom < draggedTo - draggedFrom);
        Assert.True(closeFrom > draggedFrom && closeTo < draggedTo);
        Assert.Empty(bench.Troubles);
    }

    [Fact]
    public async Task Touch_Pinch_ZoomsIn()
    {
        await using PageBench bench = await browser.OpenAsync();
        await bench.GoAsync("record");
        (double from, double to) = await SeenAsync(bench);

        await Slider(bench).EvaluateAsync(
            """
            (stage) => {
              stage.setPointerCapture = () => {};
              const box = stage.getBoundingClientRect();
              const at = (type, id, share) => stage.dispatchEvent(new PointerEvent(type,
                { pointerId: id, pointerType: 'touch', clientX: box.left + box.width * share, clientY: box.top + 50, bubbles: true }));
              at('pointerdown', 1, 0.45); at('pointerdown', 2, 0.55);
              at('pointermove', 1, 0.35); at('pointermove', 2, 0.65);
              at('pointerup', 1, 0.35); at('pointerup', 2, 0.65);
            }
            """);
        (double closeFrom, double closeTo) = await SeenAsync(bench, otherThan: from);

        Assert.InRange((closeTo - closeFrom) / (to - from), 0.25, 0.45);
    }

    [Fact]
    public async Task Channels_Chosen_ShareAChartAndAreRemembered()
    {
        await using PageBench bench = await browser.OpenAsync(1280);
        await bench.GoAsync("record");
        await bench.Page.GetByText("Choose channels").ClickAsync();
        await bench.Page.GetByLabel("House air", new() { Exact = true }).CheckAsync();
        await bench.Page.GetByLabel("Active zone", new() { Exact = true }).CheckAsync();
        await bench.Page.GetByLabel("Grant", new() { Exact = true }).CheckAsync();

        await Expect(bench.Page.Locator(".chart h2")).ToHaveTextAsync(["Temperatures", "Heat"]);
        await Expect(bench.Page.Locator(".chart").First.Locator(".chart-legend li")).ToHaveCountAsync(2);

        await bench.Page.ReloadAsync();
        await Expect(bench.Page.Locator(".chart h2")).ToHaveTextAsync(["Temperatures", "Heat"]);
        Assert.Empty(bench.Troubles);
    }

    [Fact]
    public async Task Csv_OfWhatIsSeen_GoesByTheStretchAndTheChannels()
    {
        await using PageBench bench = await browser.OpenAsync(1280);
        await bench.GoAsync("record");
        (double from, _) = await SeenAsync(bench);
        await bench.Page.GetByRole(AriaRole.Button, new() { Name = "Closer" }).ClickAsync();
        (double closeFrom, _) = await SeenAsync(bench, otherThan: from);
        ILocator link = bench.Page.Locator(".chart a[download]").First;
        await Expect(link).ToHaveAttributeAsync("href", new System.Text.RegularExpressions.Regex($"from={Math.Floor(closeFrom):F0}&"));

        string csv = await bench.Host.Client.GetStringAsync((await link.GetAttributeAsync("href"))!);

        Assert.StartsWith("localTime,utcMs,activeZone (°C),heapCore (°C)", csv);

        await bench.Page.Locator("#units").ClickAsync();
        await Expect(link).ToHaveAttributeAsync("href", new System.Text.RegularExpressions.Regex("units=american$"));
        csv = await bench.Host.Client.GetStringAsync((await link.GetAttributeAsync("href"))!);
        Assert.StartsWith("localTime,utcMs,activeZone (°F),heapCore (°F)", csv);
    }

    [Fact]
    public async Task Decisions_OfTheStretch_AreMarkedListedAndLedTo()
    {
        await using PageBench bench = await browser.OpenAsync(1280);
        await bench.GoAsync("record");
        await Expect(bench.Page.Locator(".chart").First.Locator(".decision-mark").First).ToBeAttachedAsync();
        await bench.Page.GetByText("decisions in this time").ClickAsync();

        await bench.Page.Locator(".line-link").First.ClickAsync();

        await Expect(bench.Page.Locator("h1")).ToHaveTextAsync("One decision");
    }

    private static ILocator Slider(PageBench bench) => bench.Page.GetByRole(AriaRole.Slider, new() { Name = "Heap temperatures: cursor in time" });

    // What is seen is told by the CSV link; it follows once a movement has settled.
    private static async Task<(double From, double To)> SeenAsync(PageBench bench, double otherThan = double.NaN)
    {
        IJSHandle found = await bench.Page.WaitForFunctionAsync(
            """
            (old) => {
              const href = document.querySelector('.chart a[download]')?.getAttribute('href');
              if (!href) { return null; }
              const query = new URL(href, location.href).searchParams;
              const from = Number(query.get('from'));
              return Math.floor(old) === from ? null : [from, Number(query.get('to')) - 1];
            }
            """,
            double.IsNaN(otherThan) ? -1 : otherThan);
        double[] ends = await found.JsonValueAsync<double[]>();
        return (ends[0], ends[1]);
    }
}
