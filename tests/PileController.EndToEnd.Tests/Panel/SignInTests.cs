using System.Globalization;
using System.Text.Json;
using Microsoft.Playwright;
using PileController.Access;
using PileController.Tests.Support;
using static Microsoft.Playwright.Assertions;

namespace PileController.EndToEnd.Tests.Panel;

/// <summary>Coming in at the page.</summary>
public sealed class SignInTests(BrowserBench browser) : IClassFixture<BrowserBench>
{
    private const string Passphrase = "warm chips in january";
    private const string Markup = "<img src=x onerror=alert(1)>";

    [Fact]
    public async Task Change_WithoutASession_LeadsToSignInAndBackWithWhatWasEntered()
    {
        await using PageBench bench = await browser.OpenAsync(passphrase: Passphrase);
        await bench.GoAsync("hand");
        await bench.Page.GetByLabel("Your name, for the record").FillAsync("Robin");
        await bench.Page.GetByLabel("For how many minutes").FillAsync("17");
        ILocator take = bench.Page.GetByRole(AriaRole.Button, new() { Name = "Take the pump: 50 % for 17 min" });
        await take.ClickAsync();

        await Expect(bench.Page.GetByRole(AriaRole.Heading, new() { Name = "Sign in" })).ToBeVisibleAsync();
        await bench.Page.GetByLabel("Passphrase", new() { Exact = true }).FocusAsync();
        await bench.Page.Keyboard.TypeAsync(Passphrase);
        await bench.Page.Keyboard.PressAsync("Enter");
        await Expect(bench.Page.GetByLabel("For how many minutes")).ToHaveValueAsync("17");
        await take.ClickAsync();

        await Expect(bench.Page.Locator("[data-held=pump]")).ToContainTextAsync("by Robin");
        Assert.Empty(bench.Troubles);
    }

    [Fact]
    public async Task SignIn_Wrong_SaysSoAndAfterAReloadTheSessionStands()
    {
        await using PageBench bench = await browser.OpenAsync(passphrase: Passphrase);
        await bench.GoAsync("now");
        await bench.Page.Locator("#session").ClickAsync();
        await bench.Page.GetByLabel("Passphrase", new() { Exact = true }).FillAsync("not this passphrase");
        await bench.Page.Keyboard.PressAsync("Enter");
        await Expect(bench.Page.GetByRole(AriaRole.Alert).Filter(new() { HasText = "The passphrase is not right." })).ToBeVisibleAsync();

        // The next try is let through a second after the wrong one.
        IResponse answer;
        do
        {
            await bench.Page.GetByLabel("Passphrase", new() { Exact = true }).FillAsync(Passphrase);
            answer = await bench.Page.RunAndWaitForResponseAsync(
                () => bench.Page.Keyboard.PressAsync("Enter"), one => one.Request.Method == "POST" && one.Url.EndsWith("/api/session", StringComparison.Ordinal));
        }
        while (answer.Status == 429);
        await Expect(bench.Page.Locator("#session")).ToHaveTextAsync("Signed in");
        await bench.Page.ReloadAsync();
        await Expect(bench.Page.Locator("#session")).ToHaveTextAsync("Signed in");
        await bench.GoAsync("hand");
        await bench.Page.GetByRole(AriaRole.Button, new() { Name = "Lock all outputs off" }).ClickAsync();
        await Expect(bench.Page.GetByText("All outputs are locked off at the next tick.")).ToBeVisibleAsync();
    }

    [Fact]
    public async Task SignIn_TappedBeforeTheScriptsHaveCome_IsOpenedOnceTheyHave()
    {
        await using PageBench bench = await browser.OpenAsync(passphrase: Passphrase);
        TaskCompletionSource held = new(TaskCreationOptions.RunContinuationsAsynchronously);
        await bench.Page.RouteAsync("**/js/**", async route =>
        {
            await held.Task;
            await route.ContinueAsync();
        });
        await bench.Page.GotoAsync("/", new() { WaitUntil = WaitUntilState.Commit });
        await bench.Page.GetByRole(AriaRole.Link, new() { Name = "Sign in" }).ClickAsync();
        held.SetResult();

        await Expect(bench.Page.GetByRole(AriaRole.Heading, new() { Name = "Sign in" })).ToBeVisibleAsync();
        Assert.Empty(bench.Troubles);
    }

    [Fact]
    public async Task SignOut_OnThePage_TakesTheRightToSteer()
    {
        await using PageBench bench = await browser.OpenAsync(1280, passphrase: Passphrase);
        await SignInAsync(bench, "Robin");
        await bench.GoAsync("sign-in");

        await bench.Page.GetByRole(AriaRole.Button, new() { Name = "Sign out", Exact = true }).ClickAsync();

        await Expect(bench.Page.GetByText("You are signed out.")).ToBeVisibleAsync();
        await Expect(bench.Page.Locator("#session")).ToHaveTextAsync("Sign in");
        await bench.GoAsync("rig");
        await bench.Page.GetByRole(AriaRole.Button, new() { Name = "Mend everything" }).ClickAsync();
        await Expect(bench.Page.GetByRole(AriaRole.Heading, new() { Name = "Sign in" })).ToBeVisibleAsync();
    }

    [Fact]
    public async Task Names_WithMarkup_StayTextInEveryFieldThatShowsThem()
    {
        await using PageBench bench = await browser.OpenAsync(1280, passphrase: Passphrase);
        await SignInAsync(bench, Markup);
        await bench.GoAsync("sign-in");
        await bench.Page.GetByLabel("What it is for").FillAsync(Markup);
        await bench.Page.GetByRole(AriaRole.Button, new() { Name = "Make a key" }).ClickAsync();
        await Expect(bench.Page.GetByLabel("The new key")).ToBeFocusedAsync();
        await bench.Page.GetByRole(AriaRole.Button, new() { Name = "Look again" }).ClickAsync();

        await Expect(bench.Page.Locator("main h2").First).ToHaveTextAsync($"Signed in as {Markup}");
        await Expect(bench.Page.Locator(".probe h3").First).ToHaveTextAsync(Markup);
        await Expect(bench.Page.Locator("[data-card=access] ul")).ToContainTextAsync(Markup);
        await Expect(bench.Page.Locator("[data-card=access] ul")).ToContainTextAsync("make a key");
        Assert.Equal(0, await bench.Page.Locator("img").CountAsync());

        await bench.Page.GetByRole(AriaRole.Button, new() { Name = $"Take back the key {Markup}" }).ClickAsync();
        await Expect(bench.Page.GetByText("There is no key.")).ToBeVisibleAsync();
        Assert.Empty(bench.Troubles);
    }

    private static async Task SignInAsync(PageBench bench, string name)
    {
        await bench.GoAsync("sign-in");
        await bench.Page.GetByLabel("Your name, for the record").First.FillAsync(name);
        await bench.Page.GetByLabel("Passphrase", new() { Exact = true }).FillAsync(Passphrase);
        await bench.Page.Keyboard.PressAsync("Enter");
        await Expect(bench.Page.Locator("#session")).ToHaveTextAsync("Signed in");
    }

    [Fact]
    public async Task Journal_OnAPhone_FitsWithoutScrollingSideways()
    {
        await using PageBench bench = await browser.OpenAsync();
        for (int time = 0; time < 3; time++)
        {
            await bench.Host.Client.PostAsync("/api/hand", new StringContent(new string('x', 400)));
            await bench.Host.Client.GetAsync($"/api/{new string('w', 300)}");
        }

        await bench.GoAsync("sign-in");
        ILocator journal = bench.Page.GetByRole(AriaRole.Region, new() { Name = "Who came, and what they did" });
        await Expect(journal.Locator("li")).Not.ToHaveCountAsync(0);

        Assert.Equal(0, await journal.EvaluateAsync<int>("region => region.scrollWidth - region.clientWidth"));
        await Expect(journal).ToContainTextAsync("this machine: take by hand");
    }

    [Fact]
    public async Task Journal_AndKeys_TellTheirMomentsByTheClocksOfThePlace()
    {
        await using PageBench bench = await browser.OpenAsync(passphrase: Passphrase);
        await SignInAsync(bench, "Robin");
        (string secret, _) = bench.Host.Access.Keys.Make("script", Scope.Look, "Robin")!.Value;
        bench.Host.Access.Keys.FindToken(secret);
        string[] due = await Task.WhenAll(ToldAsync(bench, "/api/access", "utcMs"), ToldAsync(bench, "/api/tokens", "usedUtcMs"));

        await bench.GoAsync("sign-in");

        await Expect(bench.Page.Locator("[data-card=access] .when").First).ToContainTextAsync(due[0]);
        await Expect(bench.Page.Locator(".probe .state").First).ToContainTextAsync($"used {due[1]}");
    }

    // The newest moment of a list, at the place: the browser's own zone is another.
    private static async Task<string> ToldAsync(PageBench bench, string path, string field)
    {
        string body = await bench.Page.EvaluateAsync<string>("async (path) => (await fetch(path)).text()", path);
        long utc = JsonDocument.Parse(body).RootElement[0].GetProperty(field).GetInt64();
        return DateTimeOffset.FromUnixTimeMilliseconds(utc).AddMinutes(PanelHost.OffsetMinutes).ToString("ddd d MMM, HH:mm", CultureInfo.InvariantCulture);
    }
}
