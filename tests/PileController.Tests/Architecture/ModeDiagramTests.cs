using PileController.Control.Modes;

namespace PileController.Tests.Architecture;

/// <summary>The diagram that contributors read is the one the code has.</summary>
public sealed class ModeDiagramTests
{
    [Fact]
    public void DevelopersGuide_ShowsTheModeTableAsItIs()
    {
        string guide = Repository.Read("DEVELOPERS.md").ReplaceLineEndings("\n");

        Assert.Contains($"```mermaid\n{ModeTable.Diagram().ReplaceLineEndings("\n").Trim()}\n```", guide, StringComparison.Ordinal);
    }
}
