using System.Reflection;

namespace PileController.EndToEnd.Tests.Demo;

/// <summary>The demo's warm start is what its own season makes, to the last byte.</summary>
public sealed class WarmStartTests
{
    [Fact]
    public async Task Season_OfTheDemo_MakesTheShippedWarmStartAgain()
    {
        string folder = Directory.CreateTempSubdirectory("pile-warm-").FullName;
        try
        {
            string made = Path.Combine(folder, "warm-start.json");

            (int exit, string told) = await DemoProcess.RunAsync(
                "season", "--settings", Path.Combine(AppContext.BaseDirectory, "Demo", "alder-bank.json"), "--start", "2025-11-01",
                "--days", "77", "--policy", "means", "--keep", made);

            Assert.True(exit == 0, told);
            using Stream shipped = Assembly.Load("PileController").GetManifestResourceStream("warm-start.json")!;
            using StreamReader reader = new(shipped);
            Assert.Equal(await reader.ReadToEndAsync(), await File.ReadAllTextAsync(made));
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }
}
