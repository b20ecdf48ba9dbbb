using Microsoft.Playwright;
using PileController.Tests.Support;

namespace PileController.EndToEnd.Tests.Panel;

/// <summary>One browser for all tests of the page; each test has its own host and its own page.</summary>
public sealed class BrowserBench : IAsyncLifetime
{
    /// <summary>Where the browser is, unless CHROMIUM_PATH says otherwise.</summary>
    private const string UsualPath = "/usr/bin/chromium";

    private IPlaywright? _playwright;
    private IBrowser? _browser;

    public async Task InitializeAsync()
    {
        _playwright = await Playwright.CreateAsync();
        _browser = await _playwright.Chromium.LaunchAsync(new BrowserTypeLaunchOptions
        {
            ExecutablePath = Environment.GetEnvironmentVariable("CHROMIUM_PATH") ?? UsualPath,
            Args =
            [
                "--headless", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run",
                "--disable-background-networking", "--disable-component-update", "--disable-sync",
            ],
        });
    }

    public async Task DisposeAsync()
    {
        await _browser!.CloseAsync();
        _playwright!.Dispose();
    }

    /// <summary>Opens a page over a new host.</summary>
    /// <param name="wide">Width in CSS pixels.</param>
    /// <param name="dark">Whether the browser asks for dark colours.</param>
    /// <param name="speed">How fast the host's clock runs.</param>
    /// <param name="passphrase">The passphrase that is set, or null for none.</param>
    public async Task<PageBench> OpenAsync(int wide = 390, bool dark = false, double speed = 60, string? passphrase = null)
    {
        PanelHost host = await PanelHost.StartAsync(speed: speed, passphrase: passphrase);
        IBrowserContext context = await ContextAsync(host.Address, wide, dark);
        return new PageBench(host, context, await context.NewPageAsync());
    }

    /// <summary>A browser of its own for an address.</summary>
    public Task<IBrowserContext> ContextAsync(string address, int wide, bool dark = false) =>
        _browser!.NewContextAsync(new BrowserNewContextOptions
        {
            ViewportSize = new ViewportSize { Width = wide, Height = wide < 600 ? 844 : 900 },
            ColorScheme = dark ? ColorScheme.Dark : ColorScheme.Light,
            BaseURL = address,
        });
}

/// <summary>A page and the host behind it. Faults of scripts and requests to other hosts are remembered.</summary>
public sealed class PageBench : IAsyncDisposable
{
    private readonly IBrowserContext _context;

    internal PageBench(PanelHost host, IBrowserContext context, IPage page)
    {
        Host = host;
        _context = context;
        Page = page;
        page.PageError += (_, fault) => Troubles.Add(fault);
        page.Console += (_, message) =>
        {
            // A refused call shows up as an error of the console too; the page tells it in words.
            if (message.Type == "error" && !message.Text.Contains("409", StringComparison.Ordinal) && !message.Text.Contains("401", StringComparison.Ordinal))
            {
                Troubles.Add(message.Text);
            }
        };
        page.Request += (_, request) =>
        {
            if (!request.Url.StartsWith(host.Address, StringComparison.Ordinal) && !request.Url.StartsWith("data:", StringComparison.Ordinal))
            {
                Troubles.Add($"asked outside: {request.Url}");
            }
        };
    }

    public PanelHost Host { get; }

    public IPage Page { get; }

    /// <summary>What went wrong in the page so far.</summary>
    public List<string> Troubles { get; } = [];

    /// <summary>Goes to a view and waits until it shows the newest tick.</summary>
    public async Task GoAsync(string view)
    {
        await Page.GotoAsync($"/#{view}");
        await Page.Locator("#link-state[data-state=live]").WaitForAsync();
        await Page.Locator("main h1").WaitForAsync(new LocatorWaitForOptions { State = WaitForSelectorState.Attached });
        await Ready(view).WaitForAsync();
    }

    public async ValueTask DisposeAsync()
    {
        await _context.CloseAsync();
        await Host.DisposeAsync();
    }

    // Each view has one element that stands only once its data have come.
    private ILocator Ready(string view) => view switch
    {
        "now" => Page.Locator("main .drawing .probe-dot").First,
        "record" => Page.Locator("main .chart path.series").First,
        "decisions" => Page.Locator("main .decision").First,
        "hand" => Page.Locator("main .choice small").First,
        "sign-in" => Page.Locator("main .card").First,
        "trips" => Page.Locator("#alarms .card").First,
        "ledger" => Page.Locator("main .book .facts").First,
        "settings" => Page.Locator("main .sections details").First,
        "rig" => Page.Locator("main .proofs li").First,
        "commission" => Page.Locator("main details[data-test]").First,
        "more" => Page.Locator("main .more a").First,
        "plan" => Page.Locator("main .plan-figures .plan-list li").First,
        _ => Page.Locator("main .probe").First,
    };
}
