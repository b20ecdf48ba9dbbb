using PileController.Benchmarks.Published;
using PileController.Tests.Architecture;

namespace PileController.Tests.Plans;

/// <summary>
/// Published woodchip heaps beside the heap model: the table contributors read is what the model says, misses included.
/// </summary>
public class PublishedHeapsTests
{
    [Fact]
    public void Table_InTheNotesForContributors_IsWhatTheModelSays()
    {
        string notes = File.ReadAllText(Path.Combine(Repository.Root, "DEVELOPERS.md"));
        Assert.Contains(string.Join('\n', PublishedTable.Lines()), notes.ReplaceLineEndings("\n"), StringComparison.Ordinal);
    }

    [Fact]
    public void Heaps_AllOfThem_NameASourceAndWhatIsAssumed() => Assert.All(PublishedHeaps.All, heap =>
    {
        Assert.NotEqual("", heap.Source);
        Assert.NotEqual("", heap.Assumed);
        Assert.NotEmpty(heap.Reports);
    });
}
