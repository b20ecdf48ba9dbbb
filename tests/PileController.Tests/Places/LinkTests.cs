using System.Text.RegularExpressions;
using PileController.Tests.Architecture;

namespace PileController.Tests.Places;

/// <summary>What a page of these rooms points to is there.</summary>
public sealed partial class LinkTests
{
    public static TheoryData<string> Pages => new(
        new[] { "hardware", "systemd" }
            .SelectMany(room => Directory.EnumerateFiles(Path.Combine(Repository.Root, room), "*.md", SearchOption.AllDirectories))
            .Select(file => Path.GetRelativePath(Repository.Root, file)));

    [Theory]
    [MemberData(nameof(Pages))]
    public void Page_LinksToWhatIsThere(string page)
    {
        string folder = Path.GetDirectoryName(Path.Combine(Repository.Root, page))!;
        IEnumerable<string> local = Link().Matches(Repository.Read(page)).Select(m => m.Groups[1].Value)
            .Where(target => !target.StartsWith("https://", StringComparison.Ordinal) && !target.StartsWith('#'));

        Assert.All(local, target => Assert.True(Path.Exists(Path.Combine(folder, target.Split('#')[0])), $"{page}: {target}"));
    }

    [GeneratedRegex(@"\]\(([^)\s]+)\)")]
    private static partial Regex Link();
}
