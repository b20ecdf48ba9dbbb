using Microsoft.Playwright;

namespace PileController.Benchmarks.Pages;

/// <summary>What a new visitor waits for, from the browser's start of the navigation.</summary>
/// <param name="FirstContentMilliseconds">Until the sentence of why, the heap's temperature and the draw are painted as text.</param>
/// <param name="LiveMilliseconds">Until the scripts have drawn the whole view and the first event of the stream has been drawn, too.</param>
/// <param name="ParsedMilliseconds">Until the browser had those texts, painted or not.</param>
internal sealed record FirstLook(double FirstContentMilliseconds, double LiveMilliseconds, double ParsedMilliseconds)
{
    // A frame's callbacks run before it is painted, a message posted in them after it. The browser's own first
    // contentful paint is waited for besides, so that nothing counts before it.
    private const string Watch =
        """
        (() => {
          const text = (place) => document.querySelector(place)?.textContent ?? '';
          const useful = () => text('.why').length > 20 && /\d/.test(text('.answer:nth-of-type(2) .big')) && [...document.querySelectorAll('.answer:nth-of-type(3) .line')].some(line => /Draws .*\d/.test(line.textContent));
          const painted = (name) => requestAnimationFrame(() => {
            const wire = new MessageChannel();
            wire.port1.onmessage = () => { window[name] ??= performance.now(); };
            wire.port2.postMessage(0);
          });
          new MutationObserver((_, watch) => {
            if (useful()) { window.parsedAt = performance.now(); watch.disconnect(); painted('usefulAt'); }
          }).observe(document, { childList: true, subtree: true, characterData: true });
          const Stream = window.EventSource;
          window.EventSource = class extends Stream {
            constructor(...given) {
              super(...given);
              // The page's own listener comes after this one, and before the frame.
              this.addEventListener('now', () => painted('eventAt'));
            }
          };
        })();
        """;

    private const string Waited =
        "() => window.usefulAt !== undefined && window.eventAt !== undefined && document.querySelector('main .drawing .probe-dot') !== null && performance.getEntriesByName('first-contentful-paint').length > 0";

    /// <summary>The median of each of the times.</summary>
    public static FirstLook Median(IReadOnlyList<FirstLook> looks)
    {
        double Middle(Func<FirstLook, double> of) => Math.Round(looks.Select(of).Order().ElementAt(looks.Count / 2), 1);
        return new FirstLook(Middle(one => one.FirstContentMilliseconds), Middle(one => one.LiveMilliseconds), Middle(one => one.ParsedMilliseconds));
    }

    // The look before this one leaves work behind, in the browser and at the controller: a renderer to end, a stream to
    // close. A visitor comes to neither.
    private static readonly TimeSpan Rest = TimeSpan.FromSeconds(2);

    /// <summary>Takes one look in a browser at rest that knows nothing of the page.</summary>
    public static async Task<FirstLook> TakeAsync(IBrowser browser, Uri page)
    {
        await using IBrowserContext context = await browser.NewContextAsync();
        IPage fresh = await RestedAsync(context);
        await fresh.GotoAsync(page.ToString());
        await fresh.WaitForFunctionAsync(Waited);
        double[] at = await fresh.EvaluateAsync<double[]>(
            "() => [Math.max(window.usefulAt, performance.getEntriesByName('first-contentful-paint')[0].startTime), window.eventAt, window.parsedAt]");
        return new FirstLook(at[0], Math.Max(at[0], at[1]), at[2]);
    }

    /// <summary>Takes one look at a page that only has to be painted, in milliseconds.</summary>
    public static async Task<double> TakeBlankAsync(IBrowser browser, Uri page)
    {
        const string Painted = "performance.getEntriesByName('first-contentful-paint')[0]?.startTime";
        await using IBrowserContext context = await browser.NewContextAsync();
        IPage fresh = await RestedAsync(context);
        await fresh.GotoAsync(page.ToString());
        await fresh.WaitForFunctionAsync($"() => {Painted} !== undefined");
        return await fresh.EvaluateAsync<double>($"() => {Painted}");
    }

    private static async Task<IPage> RestedAsync(IBrowserContext context)
    {
        IPage fresh = await context.NewPageAsync();
        await fresh.AddInitScriptAsync(Watch);
        await Task.Delay(Rest);
        return fresh;
    }
}
