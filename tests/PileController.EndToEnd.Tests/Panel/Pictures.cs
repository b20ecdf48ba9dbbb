using Microsoft.Playwright;

namespace PileController.EndToEnd.Tests.Panel;

/// <summary>Pictures to look at, where a person asks for them.</summary>
internal static class Pictures
{
    /// <summary>Keeps a picture of the whole page in the folder that PILE_PICTURES names, if it does.</summary>
    public static async Task SaveAsync(IPage page, string name)
    {
        if (Environment.GetEnvironmentVariable("PILE_PICTURES") is { Length: > 0 } folder)
        {
            await page.ScreenshotAsync(new PageScreenshotOptions { Path = Path.Combine(folder, name + ".png"), FullPage = true });
        }
    }
}
