namespace PileController.Tests.Settings;

/// <summary>The demo settings as they lie in the source tree.</summary>
internal static class DemoFile
{
    public static string Path { get; } = Find();

    public static string Text => File.ReadAllText(Path);

    private static string Find()
    {
        string? at = AppContext.BaseDirectory;
        while (at is not null && !File.Exists(System.IO.Path.Combine(at, "PileController.sln")))
        {
            at = System.IO.Path.GetDirectoryName(at);
        }

        return System.IO.Path.Combine(at!, "src", "PileController", "Demo", "alder-bank.json");
    }
}
