using System.Diagnostics;
using Microsoft.Playwright;

namespace PileController.Benchmarks.Pages;

/// <summary>What a reader of the page waits for.</summary>
/// <param name="First">The first look, medians; a new visitor each time, in a browser that has shown other pages and has been at rest for two seconds.</param>
/// <param name="FirstOfBrowser">The first look by a browser that has shown nothing yet.</param>
/// <param name="BlankMilliseconds">Until a page with one sentence and nothing else is painted in that browser, at rest as long, median: no page is sooner.</param>
/// <param name="SixChannelsMilliseconds">From telling the browser to press the button of the whole season to six channels of it drawn, median; the driver's aiming and asking is in it.</param>
/// <param name="SixChannelsPaintedMilliseconds">The same by the page's own clock, from the press to the paint, median.</param>
/// <param name="FramesPerSecond">Frames drawn a second while the charts are dragged and new data come, by the browser's tracing.</param>
/// <param name="LongestFrameMilliseconds">The longest time between two of them.</param>
/// <param name="DraggedMilliseconds">How long they were dragged.</param>
internal sealed record PageTimes(
    FirstLook First, FirstLook FirstOfBrowser, double BlankMilliseconds, double SixChannelsMilliseconds, double SixChannelsPaintedMilliseconds,
    double FramesPerSecond, double LongestFrameMilliseconds, double DraggedMilliseconds)
{
    private const int Rounds = 9;
    private const int Drags = 4;
    private const int StepsADrag = 120;
    private const string Six = "heapCore,heapTurns,house,outside,grant,waterDraw";

    // The data must be those of the season: a chart may still hold the day's.
    private const string SeasonDrawn =
        """
        performance.getEntriesByType('resource').some(e => e.startTime >= since && e.name.includes('/api/samples') && e.responseEnd > 0)
          && [...document.querySelectorAll('.chart path.series')].filter(p => (p.getAttribute('d') ?? '').length > 1000).length === 6
        """;

    private const string WatchSeason =
        $$"""
        (since) => {
          addEventListener('click', (press) => {
            const painted = () => {
              const wire = new MessageChannel();
              wire.port1.onmessage = () => { window.seasonTook = performance.now() - press.timeStamp; };
              wire.port2.postMessage(0);
            };
            const lines = () => [...document.querySelectorAll('.chart path.series[d]')].map(path => path.getAttribute('d')).filter(d => d.length > 1000);
            const before = lines();
            const look = () => ({{SeasonDrawn}}) && lines().every(line => !before.includes(line)) ? painted() : requestAnimationFrame(look);
            window.seasonTook = undefined;
            requestAnimationFrame(look);
          }, { capture: true, once: true });
        }
        """;

    // One movement of the hand a frame: whatever is drawn later than that is the page's own doing.
    private const string Drag =
        """
        async ({ drags, steps }) => {
          const stage = document.querySelector('.chart [role=slider]');
          stage.setPointerCapture = () => {};
          const box = stage.getBoundingClientRect();
          const at = (type, share) => stage.dispatchEvent(new PointerEvent(type,
            { pointerId: 1, pointerType: 'touch', clientX: box.left + box.width * share, clientY: box.top + 50, bubbles: true }));
          const frame = () => new Promise(requestAnimationFrame);
          for (let drag = 0; drag < drags; drag++) {
            at('pointerdown', 0.1);
            for (let step = 1; step <= steps; step++) {
              await frame();
              at('pointermove', 0.1 + 0.8 * step / steps);
            }
            at('pointerup', 0.9);
          }
          await frame();
        }
        """;

    /// <summary>Takes them with Debian's Chromium, or that of CHROMIUM_PATH.</summary>
    public static async Task<PageTimes> TakeAsync(Uri page, TextWriter progress)
    {
        using IPlaywright playwright = await Playwright.CreateAsync();
        progress.WriteLine("opening the page");
        await using (IBrowser warming = await LaunchAsync(playwright))
        {
            // The question is for a warm service.
            await FirstLook.TakeAsync(warming, page);
        }

        await using IBrowser browser = await LaunchAsync(playwright);
        using BlankPage blank = BlankPage.Serve();
        FirstLook firstOfBrowser = await FirstLook.TakeAsync(browser, page);
        List<FirstLook> looks = [];
        List<double> floor = [];
        for (int round = 0; round < Rounds; round++)
        {
            floor.Add(await FirstLook.TakeBlankAsync(browser, blank.Address));
            looks.Add(await FirstLook.TakeAsync(browser, page));
        }

        FirstLook first = FirstLook.Median(looks);
        await using IBrowserContext context = await browser.NewContextAsync(
            new BrowserNewContextOptions { ViewportSize = new ViewportSize { Width = 1280, Height = 900 } });
        IPage seen = await context.NewPageAsync();
        await seen.AddInitScriptAsync($"localStorage.setItem('channels', '{Six}')");
        progress.WriteLine("opening the season");
        List<double> painted = [];
        double season = await MedianAsync(() => SeasonAsync(seen, page, painted));
        progress.WriteLine("dragging");
        Drawn drawn = await DraggedAsync(context, seen);
        return new PageTimes(
            first, firstOfBrowser, Math.Round(floor.Order().ElementAt(Rounds / 2), 1), season, Math.Round(painted[1..].Order().ElementAt(Rounds / 2), 1), drawn.FramesPerSecond, drawn.LongestMilliseconds, drawn.Milliseconds);
    }

    private static Task<IBrowser> LaunchAsync(IPlaywright playwright) => playwright.Chromium.LaunchAsync(new BrowserTypeLaunchOptions
    {
        ExecutablePath = Environment.GetEnvironmentVariable("CHROMIUM_PATH") ?? "/usr/bin/chromium",
        Args = ["--headless", "--no-sandbox", "--disable-gpu", "--no-first-run", "--disable-background-networking"],
    });

    private static async Task<double> MedianAsync(Func<Task<double>> once)
    {
        await once();
        List<double> times = [];
        for (int round = 0; round < Rounds; round++)
        {
            times.Add(await once());
        }

        times.Sort();
        return Math.Round(times[Rounds / 2], 1);
    }

    private static async Task<double> SeasonAsync(IPage seen, Uri page, List<double> painted)
    {
        await seen.GotoAsync("about:blank");
        await seen.GotoAsync(new Uri(page, "/#record").ToString());
        await seen.WaitForFunctionAsync("() => document.querySelectorAll('.chart path.series[d]').length >= 6");
        double since = await seen.EvaluateAsync<double>("() => performance.now()");
        await seen.EvaluateAsync(WatchSeason, since);
        long began = Stopwatch.GetTimestamp();
        await seen.GetByRole(AriaRole.Button, new() { Name = "Season" }).ClickAsync();
        await seen.WaitForFunctionAsync($"(since) => {SeasonDrawn}", since);
        double took = Stopwatch.GetElapsedTime(began).TotalMilliseconds;
        IJSHandle own = await seen.WaitForFunctionAsync("() => window.seasonTook");
        painted.Add(await own.JsonValueAsync<double>());
        return took;
    }

    private static async Task<Drawn> DraggedAsync(IBrowserContext context, IPage seen)
    {
        await seen.GetByRole(AriaRole.Button, new() { Name = "14 days" }).ClickAsync();
        await seen.WaitForTimeoutAsync(1000);
        FrameTrace trace = await FrameTrace.BeginAsync(await context.NewCDPSessionAsync(seen));
        await seen.EvaluateAsync(Drag, new { drags = Drags, steps = StepsADrag });
        return await trace.EndAsync();
    }
}
